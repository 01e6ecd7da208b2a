"""Amounts asked for at the bench: few digits, never outside what is allowed."""

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries.masters import FormulaLine
from ledger.domain.masters.formulas import Called, Wanted
from ledger.domain.masters.weighing import asked, limits_asked, limits_shown, weighable

AMOUNTS = st.integers(1, 10**12)


@pytest.mark.parametrize(
    ("amount", "measure", "found"),
    [
        (26_667, Measure.MG, 26_700),
        (17_778, Measure.MG, 17_800),
        (916_667, Measure.UL, 917_000),
        (2_466_667, Measure.UL, 2_470_000),
        (312, Measure.MG, 312),
        (7, Measure.UL, 7),
        (1_234_000_000, Measure.UEACH, 1_234_000_000),
    ],
)
def test_three_digits_are_asked_for_and_things_are_counted(
    amount: int, measure: Measure, found: int
) -> None:
    assert weighable(amount, measure) == found


@given(AMOUNTS, st.integers(0, 100_000))
@example(26_667, 100)
def test_what_is_asked_for_is_never_outside_the_limits(amount: int, off_mpct: int) -> None:
    least = round(amount * (1 - off_mpct / 100_000))
    most = round(amount * (1 + off_mpct / 100_000))
    assume(least <= amount <= most)
    assert least <= weighable(amount, Measure.MG, least, most) <= most


@given(AMOUNTS)
def test_without_limits_it_is_off_by_half_of_its_third_digit_at_most(amount: int) -> None:
    found = weighable(amount, Measure.UL)
    assert abs(found - amount) * 200 <= amount
    assert len(str(2 * found).rstrip("0")) <= 4
    assert len(str(found).rstrip("0")) <= 3 or found == amount


def test_half_of_what_was_measured_in_three_digits_is_asked_for_as_it_is() -> None:
    assert weighable(225_000 // 2, Measure.UL) == 112_500


@given(AMOUNTS, st.integers(1, 50_000))
def test_limits_are_shown_inwards_and_little_of_them_is_lost(amount: int, off_mpct: int) -> None:
    off = amount * off_mpct // 100_000
    assume(off > 0)
    low, high = limits_shown(amount, Measure.MG, amount - off, amount + off)
    assert amount - off <= low <= amount <= high <= amount + off
    assert max(low - (amount - off), amount + off - high) * 5 <= off


def wanted(written: str, amount: int, *limits: int) -> Wanted:
    line = FormulaLine(parse_quantity(written), material="sugar")
    least, most = limits or (None, None)
    return Wanted(Called("sugar", None), Measure.MG, amount, least, most, line)


def test_what_a_formula_says_itself_is_asked_for_as_it_says() -> None:
    assert asked(wanted("312.55g", 312_550)) == 312_550
    assert asked(wanted("312.55g", 625_100)) == 625_000


def test_an_overage_on_what_a_formula_says_is_asked_for_to_the_last_digit() -> None:
    line = FormulaLine(parse_quantity("15mL"), material="oil", overage_mpct=1100)
    assert asked(Wanted(Called("oil", None), Measure.UL, 15_165, None, None, line)) == 15_165
    assert asked(Wanted(Called("oil", None), Measure.UL, 15_166, None, None, line)) == 15_200


def test_limits_of_what_is_counted_are_shown_as_they_are() -> None:
    assert limits_shown(1_234_000_000, Measure.UEACH, 1_233_000_000, 1_235_000_000) == (
        *(1_233_000_000, 1_235_000_000),
    )


def test_limits_that_a_formula_does_not_give_are_not_shown() -> None:
    assert limits_asked(wanted("20g", 17_778)) is None
    for one in ({"least": None}, {"most": None}):
        assert limits_asked(replace(wanted("20g", 17_778, 8_889, 26_667), **one)) is None
    assert limits_asked(wanted("20g", 17_778, 8_889, 26_667)) == (8_890, 26_600)


@pytest.mark.parametrize(
    ("least", "most", "found"),
    [
        (None, 26_700, 26_700),
        (None, 26_699, 26_670),
        (None, 26_669, 26_667),
        (26_600, 26_700, 26_700),
    ],
)
def test_a_limit_just_met_by_fewer_digits_keeps_them(
    least: int | None, most: int, found: int
) -> None:
    assert weighable(26_667, Measure.MG, least, most) == found


@pytest.mark.parametrize(("least", "found"), [(26_700, 26_700), (26_701, 26_730), (26_731, 26_732)])
def test_a_limit_below_just_met_by_fewer_digits_keeps_them(least: int, found: int) -> None:
    assert weighable(26_732, Measure.MG, least) == found
