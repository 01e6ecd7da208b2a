"""Decanting: what is recorded."""

import pytest

from tests.keeper import Keeper
from tests.service.cases import UL, Said, amount, check_recorded
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a decanting": (
        "decant",
        {"lot": "OE-001-5", "drawn": "400mL", "heel": "10mL"},
        None,
        {"drawn": amount(400_000, UL, "400mL"), "heel": amount(10_000, UL, "10mL")},
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "decant")
