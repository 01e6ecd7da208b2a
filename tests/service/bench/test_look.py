"""Looks at a lot: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a look": (
        "look",
        {
            "lot": "OE-001-5",
            "grade": "hazy",
            "of": "as poured",
            "dilution": "1:7",
            "ntu": "9.4",
            "age": "2d",
            "flags": "louche, Ring",
            "words": "smells of peel",
        },
        None,
        {
            "grade": "hazy",
            "looked_at": "as-poured",
            "dilution": "1:7",
            "ntu_milli": 9_400,
            "age_minutes": 2880,
            "ring": True,
            "louche": True,
            "sediment": False,
            "floc": False,
            "crystals": False,
            "words": "smells of peel",
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a grade nobody knows": (
        "look",
        {"lot": "OE-001-5", "grade": "murky", "flags": "ring,fog"},
        InputError,
        (
            (
                '"fog" is not a flag of a look.',
                "Choose from: ring, louche, sediment, floc, crystals.",
            ),
            (
                '"murky" is not a grade of clarity.',
                "Choose one of: bright, clear, hazy, opalescent, cloudy, milky.",
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
