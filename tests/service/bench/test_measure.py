"""Readings of an instrument: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a reading": (
        "measure",
        {"lot": "OE-001-5", "what": "density", "reading": "0.8123", "temp": "20"},
        None,
        {
            "what": "density",
            "reading_micro": 812_300,
            "unit": "g/mL",
            "written": "0.8123",
            "temp_mdegc": 20_000,
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a reading in the wrong unit": (
        "measure",
        {"lot": "OE-001-5", "what": "brix", "reading": "65 %"},
        InputError,
        (('"65 %" is not a brix in °Bx.', "Write a number in °Bx."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)
