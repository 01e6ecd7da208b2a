"""Amounts for machines and spreadsheets: plain decimals, exactly what the book holds."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import MOST, Measure
from reports.kit import amounts as module
from reports.kit.amounts import UNITS, amount_in, decimal_amount
from tests.kept.said import check_constants, check_said

SMALLEST = {"mL": Fraction(1, 1000), "g": Fraction(1, 1000), "each": Fraction(1, 10**6)}


@pytest.mark.parametrize(
    ("amount", "words"), [(0, "0"), (1, "0.001"), (30_769, "30.769"), (-1_500, "-1.5"), (1000, "1")]
)
def test_thousandths_are_told_as_a_plain_decimal(amount: int, words: str) -> None:
    assert decimal_amount(amount) == words


def test_an_amount_is_told_without_its_unit() -> None:
    assert amount_in(30_769, Measure.UL) == "30.769"
    assert amount_in(6_000_000, Measure.UEACH) == "6"


@given(st.integers(-MOST, MOST), st.sampled_from(Measure))
def test_an_amount_is_read_back_exactly(amount: int, measure: Measure) -> None:
    assert Fraction(amount_in(amount, measure)) == amount * SMALLEST[UNITS[measure]]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
