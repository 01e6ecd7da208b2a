"""The cost of a lot in words: a price that nobody could read by the mL is told by the litre."""

from dataclasses import replace
from fractions import Fraction

import pytest

from ledger.service.costing import CostCard, cost
from reports.build.costing import head, plain, price_lines
from tests.keeper import Keeper
from tests.path import walk_main_path


def tap_water(keeper: Keeper, price: str) -> CostCard:
    """Return the cost of a delivery of 1000 L of water for so much."""
    lot = keeper.opens("receive", material="water", amount="1000L", cost=price)
    return cost(keeper.book, lot, margin="50")


@pytest.mark.parametrize(
    ("paid", "lines", "per_ml"),
    [
        (
            "2.00",
            ["A litre: 0.002000 EUR.", "Price of a litre for a margin of 50 %: 0.004000 EUR."],
            "0.000002000",
        ),
        (
            "0.05",
            ["A litre: under 0.0001 EUR.", "Price of a litre for a margin of 50 %: 0.0001000 EUR."],
            "0.00000005000",
        ),
        (
            "100.00",
            ["A mL: 0.0001000 EUR.", "Price of a mL for a margin of 50 %: 0.0002000 EUR."],
            "0.0001000",
        ),
    ],
)
def test_water_is_priced_by_the_litre_where_a_ml_costs_next_to_nothing(
    paid: str, lines: list[str], per_ml: str, sqlite_keeper: Keeper
) -> None:
    card = tap_water(sqlite_keeper, paid)
    assert head(card)[1:] == lines
    assert price_lines(card) == [f"Cost: {_short(lines[0])}."]
    assert plain(card)["per_ml"] == per_ml


def _short(line: str) -> str:
    what, price = line.rstrip(".").split(": ")
    return f"{price} {what.replace('A ', 'a ')}"


def test_a_syrup_is_priced_by_the_ml_the_bottle_and_the_glass(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    card = replace(cost(sqlite_keeper.book, lots.packed), per_ml=Fraction(1, 3))
    assert [line.split(":")[0] for line in head(card)[1:4]] == [
        "A mL",
        "A bottle",
        "A glass of 240 mL at 1",
    ]
    assert head(card)[1] == "A mL: 0.003333 EUR."


def test_what_cost_nothing_has_no_price_to_tell(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    card = cost(sqlite_keeper.book, lots.water)
    assert head(card)[1] == "A mL: 0.00 EUR."
    assert price_lines(card) == []
