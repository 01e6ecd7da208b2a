"""Making a batch up to a volume: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import UL, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a making up, of which the book works out what it took": (
        "makeup",
        {"lot": "OE-001-5", "volume": "450mL", "source": "NS-001-J"},
        None,
        {
            "volume": amount(450_000, UL, "450mL"),
            "source": "NS-001-J",
            "used": amount(30_000, UL, "30 mL"),
        },
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


def test_a_making_up_over_solids_of_no_known_density_is_not_worked_out(bench: Keeper) -> None:
    bench.do("material", code="citric", kind="acid")
    citric = bench.opens("receive", material="citric", amount="1kg")
    bench.do("add", lot="OE-001-5", source=citric, amount="100g")
    with pytest.raises(RefusedError) as raised:
        bench.do("makeup", lot="OE-001-5", volume="600mL", source="NS-001-J")
    assert raised.value.problems == (
        (
            "100 g of solids went into OE-001-5 since its volume was last measured, so the book "
            "cannot tell how much it took.",
            "Say how much you used with --used.",
        ),
    )


ALONE: Alone = (
    {"lot": "OE-001-5", "volume": "450mL", "source": "NS-001-J"},
    {
        "used": ("25mL", {"used": amount(25_000, UL, "25mL")}),
        "temp": ("20 °C", {"temp_mdegc": 20_000}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "makeup", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "makeup")


def test_a_temperature_that_is_none_is_told_once_the_lots_are_known(bench: Keeper) -> None:
    words = {"lot": "OE-001-5", "volume": "450mL", "source": "NS-001-J", "temp": "cool"}
    check_refused(
        (
            "makeup",
            words,
            InputError,
            (('"cool" is not a temperature in °C.', "Write a number in °C."),),
        ),
        bench,
    )
