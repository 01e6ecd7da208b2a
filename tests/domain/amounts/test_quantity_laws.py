"""Laws of amounts: what is shown reads back, and rounding is exact and half to even."""

from decimal import ROUND_HALF_EVEN, Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import (
    MOST,
    Measure,
    Quantity,
    mass_from_volume,
    parse_quantity,
    show,
    show_apart,
    volume_from_mass,
)
from ledger.domain.amounts.units import UNITS, Unit
from ledger.errors import LedgerError, RefusedError

UL, MG, UEACH = Measure.UL, Measure.MG, Measure.UEACH


@given(amount=st.integers(1, 10**6 - 1), measure=st.sampled_from([UL, MG]))
def test_what_is_shown_below_a_litre_or_a_kilogram_reads_back(
    amount: int, measure: Measure
) -> None:
    text = show(amount, measure)
    assert parse_quantity(text) == Quantity(amount, measure, text)


@given(thousands=st.integers(10**3, MOST // 10**3), measure=st.sampled_from([UL, MG]))
def test_whole_millilitres_and_grams_read_back(thousands: int, measure: Measure) -> None:
    amount = thousands * 1000
    assert parse_quantity(show(amount, measure)).amount == amount


@given(amount=st.integers(1, MOST))
def test_counts_read_back(amount: int) -> None:
    assert parse_quantity(show(amount, UEACH), counted=True).amount == amount


@given(amount=st.integers(10**6, MOST), measure=st.sampled_from([UL, MG]))
def test_what_is_shown_is_within_half_of_the_last_decimal(amount: int, measure: Measure) -> None:
    assert abs(parse_quantity(show(amount, measure)).amount - amount) <= 500


@given(amount=st.integers(-MOST, MOST), measure=st.sampled_from(Measure))
def test_a_negative_amount_is_shown_as_its_opposite_with_a_minus(
    amount: int, measure: Measure
) -> None:
    if amount < 0:
        assert show(amount, measure) == "-" + show(-amount, measure)
    else:
        assert "-" not in show(amount, measure)


@given(
    amount=st.integers(1, MOST - 10**6),
    more=st.integers(0, 10**6),
    measure=st.sampled_from(Measure),
)
@example(amount=2_100_000, more=400, measure=UL)
def test_amounts_that_differ_are_shown_apart_and_equal_ones_alike(
    amount: int, more: int, measure: Measure
) -> None:
    shown = show_apart(measure, amount, amount + more, amount)
    assert (shown[0] == shown[1]) is (more == 0)
    assert shown[0] == shown[2]
    for told, exact in zip(shown, (amount, amount + more), strict=False):
        assert abs(parse_quantity(told, counted=measure is UEACH).amount - exact) <= 500


@given(st.decimals("0.001", "999999", places=5))
@example(Decimal("0.0015"))
@example(Decimal("0.0025"))
def test_rounding_is_that_of_decimal_half_even(value: Decimal) -> None:
    expected = (value * 1000).to_integral_value(ROUND_HALF_EVEN)
    assert parse_quantity(f"{value:f} mL").amount == expected


@given(
    st.sampled_from([unit for unit in UNITS if unit.name != "each"]),
    st.integers(1, 999),
    st.integers(1, 16),
)
def test_conversion_is_the_exact_factor_rounded(unit: Unit, over: int, under: int) -> None:
    text, expected = f"{over}/{under} {unit.name}", round(unit.smallest * Fraction(over, under))
    if expected == 0:
        with pytest.raises(RefusedError):
            parse_quantity(text)
    else:
        assert parse_quantity(text).amount == expected


TYPED = st.text("0123456789.,/ -½xmLgozlbeachfUSimp\u00b5\t", max_size=24)


def parsed(text: str, counted: bool) -> Quantity | LedgerError:
    try:
        return parse_quantity(text, counted=counted)
    except LedgerError as error:
        return error


@given(text=TYPED | st.text(max_size=80), counted=st.booleans())
@example(text="9" * 5000, counted=True)
def test_any_text_is_an_amount_or_an_error_in_words(text: str, counted: bool) -> None:
    read = parsed(text, counted)
    if isinstance(read, LedgerError):
        assert read.what.endswith(".")
        assert read.todo.endswith(".")
    else:
        assert 1 <= read.amount <= MOST
        assert read.written == " ".join(text.split())


@given(volume=st.integers(-(10**12), 10**12), density=st.integers(1, 3_000_000))
def test_mass_is_volume_times_density_rounded_half_to_even(volume: int, density: int) -> None:
    exact = Decimal(volume) * Decimal(density) / Decimal(10**6)
    assert mass_from_volume(volume, density) == exact.to_integral_value(ROUND_HALF_EVEN)


@given(mass=st.integers(-(10**12), 10**12), density=st.integers(1, 3_000_000))
def test_volume_from_mass_is_the_nearest_and_even_on_a_tie(mass: int, density: int) -> None:
    volume = volume_from_mass(mass, density)
    twice_off = 2 * abs(volume * density - mass * 10**6)
    assert twice_off <= density
    assert twice_off < density or volume % 2 == 0


@given(volume=st.integers(0, 10**12), density=st.integers(1_000_000, 3_000_000))
def test_a_volume_denser_than_water_comes_back_from_its_mass(volume: int, density: int) -> None:
    assert volume_from_mass(mass_from_volume(volume, density), density) == volume
