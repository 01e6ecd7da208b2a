"""The cost of a lot in words: prices to the cent, amounts with digits that mean something."""

from fractions import Fraction

import pytest

from ledger.service.costing import cost
from reports.build.costing import figures, head, price, rows
from tests.keeper import Keeper
from tests.path import walk_main_path


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
