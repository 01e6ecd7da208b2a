"""Decanting: what is recorded."""

import pytest

from tests.keeper import Keeper
from tests.service.cases import UL, Said, amount, check_recorded

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
