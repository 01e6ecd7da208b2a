"""Clearing, looking and measuring: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import MG, UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a filtering": (
        "filter",
        {
            "lot": "OE-001-5",
            "medium": "paper",
            "pore": "20-25 µm",
            "volume_out": "400mL",
            "vacuum": "40",
            "cake": "fresh",
            "precoat": "5g",
            "minutes": "1h",
        },
        None,
        {
            "pass_no": 1,
            "medium": "paper",
            "volume_in": amount(420_000, UL, "420 mL"),
            "volume_out": amount(400_000, UL, "400mL"),
            "pore_low_nm": 20_000,
            "pore_high_nm": 25_000,
            "cake": "fresh",
            "precoat": amount(5_000, MG, "5g"),
            "vacuum_pa": 40_000,
            "vacuum_reference": "below-atmosphere",
            "minutes": 60,
        },
    ),
    "a rinse kept apart": (
        "rinse",
        {
            "lot": "OE-001-5",
            "source": "NS-001-J",
            "volume_in": "20mL",
            "volume_out": "15mL",
            "went_to": "apart",
        },
        "RL-001-3",
        {
            "source": "NS-001-J",
            "volume_in": amount(20_000, UL, "20mL"),
            "volume_out": amount(15_000, UL, "15mL"),
            "went_to": "apart",
        },
    ),
    "a decanting": (
        "decant",
        {"lot": "OE-001-5", "drawn": "400mL", "heel": "10mL"},
        None,
        {"drawn": amount(400_000, UL, "400mL"), "heel": amount(10_000, UL, "10mL")},
    ),
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
    "a pore size that is none": (
        "filter",
        {"lot": "OE-001-5", "medium": "paper", "volume_out": "400mL", "pore": "1-2-3"},
        InputError,
        (('"1-2-3" is not a pore size.', "Write it in µm as 20 or 20-25."),),
    ),
    "a pore size of nothing": (
        "filter",
        {"lot": "OE-001-5", "medium": "paper", "volume_out": "400mL", "pore": "0-20"},
        RefusedError,
        (
            (
                "A pore size must be more than zero, and 0-20 is not.",
                "Read it on the filter or its box, in µm.",
            ),
        ),
    ),
    "a rinse to nowhere": (
        "rinse",
        {
            "lot": "OE-001-5",
            "source": "NS-001-J",
            "volume_in": "20mL",
            "volume_out": "15mL",
            "went_to": "drain",
        },
        InputError,
        (
            (
                '"drain" is not a place where the rinse went.',
                "Choose one of: batch, apart, waste.",
            ),
        ),
    ),
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


def test_a_second_pass_is_counted_by_the_book(bench: Keeper) -> None:
    for number, volume in enumerate(["410mL", "400mL"], start=1):
        made = bench.do("filter", lot="OE-001-5", medium="paper", volume_out=volume)
        assert facts_to_plain(made.entry.facts)["pass_no"] == number
