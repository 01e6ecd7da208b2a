"""Whatever stands in the cells of a table, its rows are acts, or it is told why they are none."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.grid import Line, Table
from ledger.service.copies.intake import row_acts
from ledger.service.copies.intake.column_map import ActMap, TableMap
from ledger.service.copies.intake.row_acts import (
    CODES,
    DAYS,
    MONEY,
    NUMBERS,
    OPENS,
    Reading,
    acts_of_table,
    shown_sign,
)
from ledger.service.copies.intake.table_files import read_tables
from ledger.service.copies.intake.table_maps import shipped_map
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS

GERMAN = Path(__file__).parent / "german_season" / "Chargen.csv"
READING = Reading(DayOrder.DMY, ",", shipped_map("german-season").words)
CELLS = st.one_of(
    st.text(max_size=12),
    st.sampled_from(["1.250", "30,5 ml", "31.02.2026", "45012", "=1+1", "{Charge}", "½", "-1"]),
)


def german() -> Table:
    ((table,), _) = read_tables(GERMAN)
    return table


@given(cell=CELLS, column=st.integers(0, 20), row=st.integers(0, 2))
def test_any_cell_is_read_or_told_of_in_its_column(cell: str, column: int, row: int) -> None:
    table, (_, told, _) = german(), shipped_map("german-season").tables
    cells = list(table.lines[row].cells)
    cells[column] = cell
    lines = [Line(2, tuple(cells)) if at == row else line for at, line in enumerate(table.lines)]
    acts, found, left_out = acts_of_table(replace(table, lines=tuple(lines)), told, READING, 0)
    assert {act.is_broken for act in acts} <= {bool(found), False}
    assert left_out == 0
    for each in found:
        assert each.column is not None
        assert each.what.endswith(".")


def test_a_row_is_known_again_wherever_it_stands_and_whatever_is_added_beside_it() -> None:
    table, (_, told, _) = german(), shipped_map("german-season").tables
    rows = {act.row for act in acts_of_table(table, told, READING, 0)[0]}
    turned = tuple(Line(line.number + 7, (*line.cells, "new")) for line in reversed(table.lines))
    wider = replace(table, head=(*table.head, "Mehr"), lines=turned)
    assert {act.row for act in acts_of_table(wider, told, READING, 0)[0]} == rows
    twice = replace(table, lines=(*table.lines, table.lines[0]))
    assert len({act.row for act in acts_of_table(twice, told, READING, 0)[0]}) == len(rows) + 1


@pytest.mark.parametrize(
    ("condition", "lines"),
    [
        ("{Aspetto} = limpido", [2]),
        ("{Aspetto} = Limpido", [2]),
        ("{Aspetto} = clear", [2, 3]),
        ("{Aspetto} = torbido", []),
        ("{Aspetto}", [2, 3, 4]),
    ],
)
def test_a_condition_is_met_by_the_word_of_the_sheet_and_by_that_of_the_book(
    condition: str, lines: list[int]
) -> None:
    """Else goods that the sheet calls clear would stay unreleased, and nothing would say so."""
    words = {"lot": "{Lotto}", "verdict": "release"}
    release = ActMap("judge", words, frozenset({"Lotto"}), condition)
    rows = (("A", "limpido"), ("B", "Clear"), ("C", "opaco"), ("D", ""))
    table = Table(
        "Lotti.csv",
        "Lotti",
        head=("Lotto", "Aspetto"),
        lines=tuple(Line(number, row) for number, row in enumerate(rows, 2)),
    )
    told = TableMap(name="Lotti", acts=(release,))
    reading = Reading(DayOrder.DMY, ",", {"": {"limpido": "clear"}}, at="2026-01-12")
    acts, found, _ = acts_of_table(table, told, reading, 0)
    assert ([act.line for act in acts], found) == (lines, [])


def test_the_words_that_are_days_numbers_and_codes_are_words_of_verbs() -> None:
    words = {word for verb in VERBS for word in words_of(VERBS[verb])}
    assert (DAYS | NUMBERS | CODES | MONEY) - {"at"} <= words
    assert VERBS.keys() >= OPENS


LOOKS = Table(
    "Looks.csv",
    "Looks",
    head=("Lot", "Day", "Grade"),
    lines=(
        *(
            Line(2, ("A", "12.1.2026", "clear")),
            Line(3, ("", "12.1.2026", "")),
        ),
        *(Line(4, ("A", "", "clear")), Line(5, ("A", "soon", "clear"))),
    ),
)


NO_LOT = (3, "Lot", "It is empty, and look needs it as the lot.", "Write it there.")
NO_GRADE = (3, "Grade", "It is empty, and look needs it as the grade.", "Write it there.")


def found_in(words: dict[str, str], at: str | None = None) -> list[tuple[object, ...]]:
    told = TableMap(name="Looks", acts=(ActMap("look", words, frozenset()),))
    _, found, _ = acts_of_table(LOOKS, told, Reading(DayOrder.DMY, ",", {}, at=at), 0)
    return [(one.line, one.column, one.what, one.todo) for one in found]


def test_what_a_row_lacks_or_cannot_say_is_told_with_its_column_and_what_to_write() -> None:
    words = {"lot": "{Lot}", "grade": "{Grade}"}
    no_time = "It does not say when it happened.", "Add a column, or give --at."
    no_day = '"soon" is no day and no time.', "Write it as 2026-02-03 or 2026-02-03 10:15."
    assert found_in({**words, "at": "{Day}"}) == [
        NO_LOT,
        NO_GRADE,
        (4, "Day", "It is empty, and look needs it as the time.", "Write it there."),
        (5, "Day", *no_day),
    ]
    assert found_in(words) == [
        (2, None, *no_time),
        (3, None, *no_time),
        NO_LOT,
        NO_GRADE,
        (4, None, *no_time),
        (5, None, *no_time),
    ]
    assert found_in(words, at="2026-01-12") == [NO_LOT, NO_GRADE]
    assert (2, None, *no_day) in found_in(words, at="soon")


def test_a_column_that_a_map_names_and_a_heading_lacks_is_told_with_those_it_has() -> None:
    what = 'The map names the column "Haze", which the heading does not have.'
    todo = "It has: Lot, Day, Grade."
    assert found_in({"lot": "{Lot}", "note": "{Haze}"}) == [(None, None, what, todo)]


@pytest.mark.parametrize(
    ("verb", "word", "cell", "value"),
    [
        ("material", "code", "Öl (süß) 96 %", "ol-suss-96"),
        ("material", "name", "Öl (süß) 96 %", "Öl (süß) 96 %"),
        ("receive", "material", "Öl (süß)", "ol-suss"),
        ("receive", "code", "OR 23/01", "OR-23-01"),
        ("receive", "supplier", "OR 23/01", "OR 23/01"),
        ("add", "source", "OR 23/01", "OR-23-01"),
        ("limit", "code", "us lead", "us lead"),
        ("receive", "amount", "1.250,5 Litros", "1250.5 L"),
        ("receive", "cost", "1.250,50 €", "1250.50"),
        ("receive", "best_before", "3.4.2027", "2027-04-03"),
        ("photo", "file", "a.jpg", "in/a.jpg"),
        ("look", "words", "klar", "hell"),
        ("look", "grade", "Klar", "clear"),
        ("look", "grade", "", ""),
    ],
)
def test_a_word_is_written_as_the_book_reads_it(
    verb: str, word: str, cell: str, value: str
) -> None:
    """A word of its own for a word of the book comes before one for all."""
    words = {"": {"klar": "hell"}, "grade": {"klar": "clear"}}
    reading = Reading(DayOrder.DMY, ",", words, currency="EUR", folder="in")
    assert row_acts._value(verb, word, "{X}", lambda _: cell, reading) == (value or None)


def test_columns_without_a_heading_are_no_columns_and_the_sign_is_that_of_the_numbers() -> None:
    table = Table(
        "In.csv",
        "In",
        head=("", "Menge", "Notiz"),
        lines=(Line(2, ("x", "1,5", "2.5")), Line(3, ("y", "1,25 €", "3.5"))),
    )
    acts = (ActMap("receive", {"amount": "{menge} L", "material": "{notiz}"}, frozenset()),)
    told = TableMap(name="In", acts=acts)
    assert shown_sign(table, told) == ","
    dotted = (ActMap("receive", {"amount": "{notiz} L"}, frozenset()),)
    assert shown_sign(table, replace(told, acts=dotted)) == "."
    read, found, left = acts_of_table(table, told, Reading(None, ",", {}, at="2026-01-12"), 3)
    assert (len(read), found, left) == (2, [], 0)
    assert [act.turn for act in read] == [
        ("2026-01-12 23:59", 3, 2, 0),
        ("2026-01-12 23:59", 3, 3, 0),
    ]
    assert read[0].words == {"amount": "1.5 L", "material": "2-5", "at": "2026-01-12"}
