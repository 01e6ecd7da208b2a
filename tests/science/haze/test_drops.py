"""How turbid drops make a liquid, and how much less the same drops show in syrup."""

import pytest

from ledger.science.haze.drops import (
    MOST_NTU,
    Drops,
    Range,
    against,
    index_of_spirit,
    index_of_syrup,
    turbidity,
)

ORANGE = Drops(0.842, 1.473)
WATER, SYRUP = index_of_syrup(0), index_of_syrup(60)


def test_syrup_bends_light_as_tables_say() -> None:
    """ICUMSA SPS-3 at 20 °C, 50 % m/m: 1.42009 (from memory); not one of the four points."""
    assert index_of_syrup(50) == pytest.approx(1.4201, abs=2e-4)
    assert index_of_syrup(10) == pytest.approx(1.3478, abs=2e-4)


def test_drops_hardly_show_in_heavy_syrup() -> None:
    """Some 16 to 75 times less, by the reckoning of others; the more the larger the drops."""
    found = against(ORANGE, SYRUP, index_of_syrup(9.3))
    assert 15 < found.low < 20
    assert 60 < found.high < 110
    assert against(ORANGE, WATER, WATER) == (1.0, 1.0)


def test_drops_of_the_anchor_lie_in_the_band_and_no_drops_show_nothing() -> None:
    """500 mg/L in drops of 77 nm, a little smaller than any here, gave 72 NTU (abstract)."""
    found = turbidity(Range(500, 500), ORANGE, WATER)
    assert found.low < 72 < found.high
    assert turbidity(Range(0, 0), ORANGE, WATER) == (0, 0)


def test_more_oil_is_more_turbid_up_to_the_end_of_the_scale() -> None:
    one, ten = (turbidity(Range(mg, mg), ORANGE, WATER) for mg in (1.0, 10.0))
    assert ten == pytest.approx((10 * one.low, 10 * one.high))
    assert turbidity(Range(1e6, 1e6), ORANGE, WATER) == (MOST_NTU, MOST_NTU)


def test_oil_that_bends_light_as_the_syrup_does_cannot_be_seen_in_it() -> None:
    assert turbidity(Range(1000, 1000), Drops(0.9, SYRUP), SYRUP).high == pytest.approx(0, abs=1e-9)


def test_a_mg_of_drops_shows_what_it_did() -> None:
    """Our own sum, kept as it is: the anchor and Mie give no more than its order of magnitude."""
    shown = turbidity(Range(1, 1), ORANGE, WATER)
    assert shown == pytest.approx((0.0307991110, 0.576514356), rel=1e-6)
    shown = turbidity(Range(2, 3), ORANGE, SYRUP)
    assert shown == pytest.approx((0.000330554549, 0.0792572629), rel=1e-6)
    found = against(ORANGE, SYRUP, index_of_syrup(9.3))
    assert found == pytest.approx((17.7626021, 99.9376004), rel=1e-6)


def test_drops_of_half_the_density_scatter_twice_as_much_a_mg() -> None:
    whole, half = (turbidity(Range(1, 1), Drops(d, 1.473), WATER) for d in (0.8, 0.4))
    assert half == pytest.approx((2 * whole.low, 2 * whole.high))


def test_spirit_bends_light_as_the_handbook_says_at_its_marks_and_between() -> None:
    """From memory of a handbook, 20 °C: 1.33299, 1.3583, 1.3616 and 1.3614 at 0, 40, 50, 100 %."""
    told = [index_of_spirit(percent) for percent in (0, 40, 50, 100)]
    assert told == [1.33299, 1.3583, 1.3616, 1.3614]
    assert index_of_spirit(45) == pytest.approx((1.3583 + 1.3616) / 2)
