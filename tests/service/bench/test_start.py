"""Beginning a batch: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a start": (
        "start",
        {
            "product": "Lemon syrup",
            "kind": "syrup",
            "target": "4L",
            "pour": "1:7",
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
        "LS-001-P",
        {
            "product": "Lemon syrup",
            "product_kind": "syrup",
            "target": amount(4_000_000, UL, "4L"),
            "purpose": "sale",
            "pour_parts": 7,
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
    ),
    "a trial with its factors": (
        "start",
        {
            "product": "Lemon essence",
            "kind": "essence",
            "target": "1L",
            "trial": "resting",
            "factors": "rest=48h; pore = 5 µm",
        },
        "LE-001-R",
        {
            "product": "Lemon essence",
            "product_kind": "essence",
            "target": amount(1_000_000, UL, "1L"),
            "purpose": "trial",
            "trial_group": "resting",
            "factors": [
                {"name": "rest", "planned": "48h"},
                {"name": "pore", "planned": "5 µm"},
            ],
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a start by a formula that is not there": (
        "start",
        {"target": "1L", "formula": "Lemon"},
        RefusedError,
        (
            (
                "The formula lemon is not in the book; it knows none yet.",
                "Load it with: pottle formula load FILE",
            ),
        ),
    ),
    "a start without a target": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": " "},
        InputError,
        (("The target is missing.", "Write a number and a unit, such as 480mL."),),
    ),
    "a way to pour of more digits than are read": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "9" * 5000},
        InputError,
        (
            (
                f'"{"9" * 5000}" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
            ),
        ),
    ),
    "a way to pour that is none": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "7:1"},
        InputError,
        (
            (
                '"7:1" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
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
