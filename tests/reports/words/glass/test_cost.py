"""The cost of a lot in words: prices that can be read, amounts with digits that mean something."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.service.glass.cost import CostCard, cost
from reports.json.glass.cost import cost_answer
from reports.words.glass import cost as module
from reports.words.glass.cost import figures, head, price, price_lines, rows
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
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
    assert cost_answer(card).per_ml == per_ml


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


@pytest.mark.parametrize(
    ("hundredths", "told", "for_machines"),
    [
        (Fraction(71314, 100), "7.13 EUR", "7.131"),
        (Fraction(100), "1.00 EUR", "1.000"),
        (Fraction(9999, 100), "0.9999 EUR", "0.9999"),
        (Fraction(1, 3), "0.003333 EUR", "0.003333"),
        (Fraction(123456), "1234.56 EUR", "1234.56"),
        (Fraction(0), "0.00 EUR", "0.00"),
    ],
)
def test_a_price_is_to_the_cent_and_below_one_to_four_figures(
    hundredths: Fraction, told: str, for_machines: str
) -> None:
    assert price(hundredths, "EUR") == told
    assert figures(hundredths) == for_machines


def test_what_a_lot_took_of_others_has_three_digits(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    path = walk_main_path(keeper)
    card = cost(keeper.book, path.packed)
    assert len(card.lines) > 3
    for line, (*_, amount, _) in zip(card.lines, rows(card), strict=False):
        digits = amount.split()[0].replace(".", "").strip("0")
        assert len(digits) <= 3, (line, amount)
    assert head(card)[0].startswith(path.packed)


@pytest.mark.parametrize(
    ("drawn", "told"), [(181_818, "0.182"), (2_333_333, "2.33"), (12_000_000, "12")]
)
def test_a_part_of_a_filter_paper_is_told_to_three_digits(
    drawn: int, told: str, sqlite_keeper: Keeper
) -> None:
    lots = walk_main_path(sqlite_keeper)
    card = cost(sqlite_keeper.book, lots.packed)
    line = replace(card.lines[0], drawn=drawn, measure=Measure.UEACH)
    assert rows(replace(card, lines=(line,)))[0][2] == told


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
