"""Checks by a second person: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

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
    "a number that may be an entry's": (
        "check",
        {"lot": "OE-001-5", "words": " 16 "},
        InputError,
        (
            (
                '"16" does not say what was checked.',
                "If entry 16 was, write: pottle check --entry 16",
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


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "check")
