"""Filling a lot into bottles: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a filling": (
        "bottle",
        {
            "source": "PS-001-T",
            "pack": "1 x 200mL",
            "drawn": "205mL",
            "bottles": "LOT-001-X",
            "fill_check": "241.2",
        },
        "BPS-002-V",
        {
            "source": "PS-001-T",
            "count": 1,
            "size": amount(200_000, UL, "200mL"),
            "drawn": amount(205_000, UL, "205mL"),
            "bottles": "LOT-001-X",
            "fill_check_mg": 241_200,
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a pack that is none": (
        "bottle",
        {"source": "PS-001-T", "pack": "one crate"},
        InputError,
        (
            (
                '"one crate" is not a pack, because it has no x between a count and a size.',
                "Write a count, x and a size, such as 15 x 250 mL.",
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
