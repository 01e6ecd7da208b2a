"""What became of tables is told with its places, one remark once."""

from msgspec.structs import replace

from ledger.domain.rules.always.parties import STAYS
from ledger.domain.tables.grid import Found
from ledger.service.copies.intake.take_in import Read, TakenIn
from reports.words.copies import taken_in as module
from reports.words.copies.taken_in import taken_in_lines
from tests.kept.said import check_constants, check_said

REMARK = Found("may.csv", 2, None, "It is unusual.", "Look again.")
TOLD = TakenIn(
    tables=(Read("may.csv", 12, ("parted by tabs",)),),
    found=(),
    answerable=0,
    remarks=tuple(replace(REMARK, line=line) for line in range(2, 13)),
    numbers=(5, 6, 7),
    kinds={"start": 1, "add": 2},
    rows=1,
    known=2,
    untried=0,
    is_recorded=True,
)


def test_what_was_recorded_is_told_with_each_remark_once() -> None:
    lines = ", ".join(f"may.csv line {line}" for line in range(2, 10))
    assert taken_in_lines(TOLD) == [
        "may.csv: 12 rows; parted by tabs.",
        f"Note: It is unusual. Look again. ({lines} and 3 more)",
        "Recorded 5 to 7: 1 row, 3 entries (1 start, 2 add).",
        "2 rows more of these files the book had already.",
        "Next: pottle stock",
    ]


def test_findings_come_first_and_nothing_else_is_said() -> None:
    found = Found("may.csv", 4, "Oil mL", "It is empty.", "Write it there.")
    wrong = replace(TOLD, found=(found,), untried=3, is_recorded=False)
    assert taken_in_lines(wrong)[1:] == [
        "may.csv line 4, column Oil mL: It is empty. Write it there.",
        "3 acts could not be tried, since what comes before is among these.",
        "1 finding; nothing was recorded.",
    ]


def test_what_wants_a_reason_alone_is_told_after_the_count() -> None:
    found = tuple(Found("may.csv", line, None, "It is unusual.", "Wait.") for line in (2, 3, 4))
    asking = ' only a reason: --because "WHY" gives it, if it is so.'
    said = [
        taken_in_lines(replace(TOLD, found=found[:many], answerable=few, is_recorded=False))[-1]
        for many, few in ((1, 1), (2, 1), (3, 2), (3, 3))
    ]
    assert said == [
        f"{these}{asking}"
        for these in ("It wants", "1 of them wants", "2 of them want", "They want")
    ]


def test_a_heading_alone_is_no_row() -> None:
    none = replace(TOLD, remarks=(), numbers=(), kinds={}, rows=0, known=0, is_recorded=False)
    assert taken_in_lines(none)[1:] == ["There is no row to take; nothing was recorded."]
    known = replace(none, known=2)
    assert taken_in_lines(known)[1:] == [
        "Nothing is new: the book has 2 rows already; nothing was recorded."
    ]


def test_one_more_place_than_is_shown_is_told_as_one_more() -> None:
    eight, nine = (
        replace(TOLD, remarks=tuple(replace(REMARK, line=line) for line in range(2, 2 + many)))
        for many in (8, 9)
    )
    lines = ", ".join(f"may.csv line {line}" for line in range(2, 10))
    assert taken_in_lines(eight)[1] == f"Note: It is unusual. Look again. ({lines})"
    assert taken_in_lines(nine)[1] == f"Note: It is unusual. Look again. ({lines} and 1 more)"
    twice = replace(eight, remarks=(*eight.remarks, eight.remarks[0]))
    assert taken_in_lines(twice) == taken_in_lines(eight)


def test_names_that_nobody_told_of_are_one_note_which_counts_them() -> None:
    def told(*names: str) -> list[str]:
        named = tuple(
            Found("may.csv", line, None, f"“{name}” {STAYS}", f"Tell of {name}.")
            for line, name in enumerate(names, start=2)
        )
        lines = taken_in_lines(replace(TOLD, remarks=(REMARK, *named)))
        assert lines[1] == "Note: It is unusual. Look again. (may.csv line 2)"
        return lines[2:-3]

    def in_one(count: int, listed: str) -> list[str]:
        return [
            f"Note: {count} names stand in the texts of these entries, where nothing can be "
            f"forgotten: {listed}. So that entries have codes instead, tell of them before: "
            'pottle party add "NAME" --phone NUMBER'
        ]

    assert told("A Bar") == [f"Note: “A Bar” {STAYS} Tell of A Bar. (may.csv line 2)"]
    assert told("A Bar", "B Bar", "A Bar") == in_one(2, "“A Bar”, “B Bar”")
    many = told(*(f"Bar {number}" for number in range(40)))
    assert many == in_one(40, "“Bar 0”, “Bar 1”, “Bar 2” and 37 more")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
