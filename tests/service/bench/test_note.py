"""Keeping the book: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import (
    Problem,
    Refused,
    Said,
    check_recorded,
    check_refused,
)

RECORDED: dict[str, Said] = {
    "a check of a lot": (
        "check",
        {"lot": "oe-001-5", "words": "the  scale"},
        None,
        {"words": "the scale"},
    ),
    "a check of a lot without words": ("check", {"lot": "OE-001-5"}, None, {}),
    "a check of an entry": (
        "check",
        {"entry": "#16", "words": "read the cylinder"},
        None,
        {"about": 16, "words": "read the cylinder"},
    ),
    "a cleaning": (
        "clean",
        {"vessel": "Demijohn 2", "method": "Hot water", "last_held": "Lemon essence"},
        None,
        {"vessel": "Demijohn 2", "how": "Hot water", "last_held": "Lemon essence"},
    ),
    "a cleaning of an empty vessel": (
        "clean",
        {"vessel": "Demijohn 2", "method": "Steam"},
        None,
        {"vessel": "Demijohn 2", "how": "Steam"},
    ),
    "an instrument that was set": (
        "equipment",
        {"name": "Scale 1", "words": "Set to zero."},
        None,
        {"name": "Scale 1", "words": "Set to zero."},
    ),
    "a note": ("note", {"text": "The  scale\nsticks."}, None, {"text": "The scale sticks."}),
}

REFUSED: dict[str, Refused] = {
    "a check of nothing": (
        "check",
        {"words": "all of it"},
        InputError,
        (
            (
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            ),
        ),
    ),
    "a check of a lot and of an entry": (
        "check",
        {"lot": "OE-001-5", "entry": "16"},
        InputError,
        (
            (
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            ),
        ),
    ),
    "a check of an entry that is not there": (
        "check",
        {"entry": "999"},
        RefusedError,
        (
            (
                "There is no entry 999 in the book.",
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
    "a cleaning of nothing in no way": (
        "clean",
        {"vessel": " ", "method": ""},
        InputError,
        (
            ("The vessel is missing.", "Give the vessel in words."),
            ("The way of cleaning is missing.", "Give the way of cleaning in words."),
        ),
    ),
    "an instrument without a name": (
        "equipment",
        {"name": "", "words": " "},
        InputError,
        (
            ("The name is missing.", "Give the name in words."),
            ("The finding is missing.", "Give the finding in words."),
        ),
    ),
    "a note from the future": (
        "note",
        {"text": "Soon.", "at": "2026-03-10 09:00"},
        RefusedError,
        (
            (
                "2026-03-10 09:00 is in the future; the clock here says 2026-03-09 09:05.",
                "Give the time at which it happened with --at, or leave it out for now.",
            ),
        ),
    ),
    "a note from a place nobody knows": (
        "note",
        {"text": "Heard.", "origin": "hearsay", "at": "noonish"},
        InputError,
        (
            (
                '"noonish" is not a time.',
                "Write 14:30, yesterday 18:00, -2h, 2026-03-02 14:30 or 2026-03-02; ~14:30 for "
                "about.",
            ),
            (
                '"hearsay" is not an origin.',
                "Choose one of: bench, paper, instrument, memory.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_check_of_an_entry_is_of_the_lot_it_is_about(bench: Keeper) -> None:
    made = bench.do("check", entry="16")
    assert made.entry.draft.lot == "OE-001-5"
    assert bench.do("clean", vessel="Pan 2", method="Steam").entry.draft.lot is None


def test_nothing_is_no_amount_to_add(bench: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        bench.do("add", lot="OE-001-5", source="SOO-001-3", amount="0mL")
    assert raised.value.problems == (
        (
            "An amount must be more than zero, and 0mL is not.",
            "Write how much there really was.",
        ),
    )


def test_an_entry_keeps_who_when_and_from_where(bench: Keeper) -> None:
    bench.by = " ab "
    made = bench.do("note", text="Copied.", at="2026-03-08 17:00", sheet="14")
    draft = made.entry.draft
    assert (draft.by, str(draft.origin), draft.sheet) == ("AB", "paper", "14")
    assert (f"{draft.happened.at:%F %T}", draft.happened.offset_min) == ("2026-03-08 17:00:00", 0)
    assert (f"{made.entry.recorded_at:%F %T}", made.entry.is_late) == ("2026-03-09 09:05:00", False)


@pytest.mark.parametrize(
    ("by", "problem"),
    [
        (
            None,
            (
                "This entry does not say who made it.",
                "Give your initials with --by or set POTTLE_BY.",
            ),
        ),
        (
            "zz",
            (
                "The initials ZZ are not in the book; it knows AB.",
                'Add the person with: pottle person add ZZ "FULL NAME"',
            ),
        ),
    ],
    ids=["nobody", "a stranger"],
)
def test_nobody_unknown_writes(by: str | None, problem: Problem, bench: Keeper) -> None:
    bench.by = by
    with pytest.raises(RefusedError) as raised:
        bench.do("note", text="Anonymous.")
    assert raised.value.problems == (problem,)
