"""Looks at a lot: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

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


ALONE: Alone = (
    {"lot": "OE-001-5", "grade": "clear"},
    {
        "of": ("in-syrup", {"looked_at": "in-syrup"}),
        "ntu": ("2.5 NTU", {"ntu_milli": 2_500}),
        "instrument": ("Meter 1", {"instrument": "Meter 1"}),
        "zeroed_on": ("water", {"zeroed_on": "water"}),
        "age": ("24h", {"age_minutes": 1_440}),
        "temp": ("20 °C", {"temp_mdegc": 20_000}),
        "flags": ("ring, floc", {"ring": True, "floc": True}),
        "words": ("Pale gold.", {"words": "Pale gold."}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "look", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "look")
