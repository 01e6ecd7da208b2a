"""Cleanings: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
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
}

REFUSED: dict[str, Refused] = {
    "a cleaning of nothing in no way": (
        "clean",
        {"vessel": " ", "method": ""},
        InputError,
        (
            ("The vessel is missing.", "Give the vessel in words."),
            ("The way of cleaning is missing.", "Give the way of cleaning in words."),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "clean")
