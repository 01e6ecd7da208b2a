"""Filling a lot into bottles: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

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


ALONE: Alone = (
    {"source": "PS-001-T", "pack": "2 x 100mL"},
    {
        "drawn": ("210mL", {"drawn": amount(210_000, UL, "210mL")}),
        "bottles": ("LOT-001-X", {"bottles": "LOT-001-X"}),
        "best_before": ("2026-09-30", {"best_before": "2026-09-30"}),
        "fill_check": ("301.5 g", {"fill_check_mg": 301_500}),
        "labour": ("30min", {"labour_minutes": 30}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "bottle", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "bottle")


def test_what_is_left_to_fill_is_told_and_what_was_drawn_is_what_the_bottles_hold(
    bench: Keeper,
) -> None:
    """Of 250 mL; enough is left where one more bottle of that size can be filled."""
    some = bench.do("bottle", source="PS-001-T", pack="1 x 125mL", best_before="2027-01-31")
    assert some.remarks[-1] == (
        "125 mL of PS-001-T are left to fill, so a dot goes on standing for it.",
        f"Name the bottles by their code, {some.code}.",
    )
    assert some.entry.facts.drawn == Quantity(125_000, Measure.UL, "125 mL")  # type: ignore[attr-defined]
    rest = bench.do("bottle", source="PS-001-T", pack="1 x 63mL", best_before="2027-01-31")
    assert [what for what, _ in rest.remarks if "left to fill" in what] == []
