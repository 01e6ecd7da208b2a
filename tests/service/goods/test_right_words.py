"""Each word of a verb that is said alone is kept in its own field, as it was told."""

import pytest

from tests.keeper import Keeper
from tests.service.cases import UL, amount
from tests.service.said_alone import Said, check_said_alone

SAID: dict[str, Said] = {
    "bottle": (
        {"source": "PS-001-T", "pack": "2 x 100mL"},
        {
            "drawn": ("210mL", {"drawn": amount(210_000, UL, "210mL")}),
            "bottles": ("LOT-001-X", {"bottles": "LOT-001-X"}),
            "best_before": ("2026-09-30", {"best_before": "2026-09-30"}),
            "fill_check": ("301.5 g", {"fill_check_mg": 301_500}),
            "labour": ("30min", {"labour_minutes": 30}),
        },
    ),
    "complain": (
        {"lot": "PS-001-T", "symptom": "cloudy"},
        {
            "party": ("Bar", {"party": "Bar"}),
            "opened": ("yesterday", {"opened": "2026-03-08"}),
            "stored": ("in the sun", {"stored": "in the sun"}),
            "mixed": ("1:7", {"mixed": "1:7"}),
            "words": ("Like milk.", {"words": "Like milk."}),
            "answer_days": ("3", {"answer_days": 3}),
        },
    ),
    "send": (
        {"lot": "PS-001-T", "amount": "10mL", "moved_as": "sample"},
        {
            "party": ("Bar", {"party": "Bar"}),
            "document": ("DN-1", {"document": "DN-1"}),
            "witness": ("CD", {"witness": "CD"}),
        },
    ),
}


@pytest.mark.parametrize("verb", SAID)
def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(
    verb: str, bench: Keeper
) -> None:
    check_said_alone(bench, verb, SAID[verb])
