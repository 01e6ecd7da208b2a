"""Instruments: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "an instrument that was set": (
        "equipment",
        {"name": "Scale 1", "words": "Set to zero."},
        None,
        {"name": "Scale 1", "words": "Set to zero."},
    ),
    "a vessel with what it holds": (
        "equipment",
        {"name": "Jar 3", "words": "Taken into use.", "holds": "2L"},
        None,
        {"name": "Jar 3", "words": "Taken into use.", "holds": amount(2_000_000, UL, "2L")},
    ),
}

REFUSED: dict[str, Refused] = {
    "an instrument without a name": (
        "equipment",
        {"name": "", "words": " "},
        InputError,
        (
            ("The name is missing.", "Give the name in words."),
            ("The finding is missing.", "Give the finding in words."),
        ),
    ),
    "a vessel that holds a weight": (
        "equipment",
        {"name": "Jar 3", "words": "Taken into use.", "holds": "2kg"},
        InputError,
        (("2kg is not a volume, so no vessel holds it.", "Write it such as 5L."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "equipment")
