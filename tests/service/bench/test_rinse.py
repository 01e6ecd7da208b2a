"""Rinsing a cake: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
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
}

RECORDED |= {
    f"a rinse to {place}": (
        "rinse",
        {
            "lot": "OE-001-5",
            "source": "ns-001-j",
            "volume_in": "20mL",
            "volume_out": "16mL",
            "went_to": place,
        },
        None,
        {
            "source": "NS-001-J",
            "volume_in": amount(20_000, UL, "20mL"),
            "volume_out": amount(16_000, UL, "16mL"),
            "went_to": place,
        },
    )
    for place in ("batch", "waste")
}
REFUSED: dict[str, Refused] = {
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
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "rinse")
