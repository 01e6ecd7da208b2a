"""The least strength at which an oil is clear: what moves it, and what stays unsaid."""

from math import log10, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.contents.louche import Solubility
from ledger.science.haze.strength import (
    Band,
    Calibration,
    Oil,
    Share,
    doubt,
    least_strength,
    middle,
    oil_of,
    thirst,
)
from ledger.service.account.shipped import solubilities

KNOWN = solubilities()
CALIBRATION = Calibration(0.64, 2.5, 1.8)


def oil(**shares: float) -> Oil:
    return oil_of(
        (Share(KNOWN[name.replace("_", "-")], low, low) for name, low in shares.items()), KNOWN
    )


def band(of: Oil, share: float = 1 / 16) -> Band:
    found = least_strength(of, share, CALIBRATION)
    assert found
    return found


def test_what_water_dissolves_better_asks_less_strength() -> None:
    assert band(oil(linalool=1)).likely < band(oil(limonene=1)).likely
    mixed = band(oil(linalool=0.5, limonene=0.5)).likely
    assert band(oil(linalool=1)).likely < mixed < band(oil(limonene=1)).likely


def test_a_substance_by_hand() -> None:
    """Log S = log S in water + cosolvency x share of ethanol, up to the oil's own density."""
    one = Solubility("x", 10.0, 10.0, "", 4.0, 0.9, 1.47)
    alone = oil_of([Share(one, 1.0, 1.0)], KNOWN)
    found = least_strength(alone, 1.0, Calibration(0.5, 3.0, 2.0))
    # From 1 to log 900 000 = 5.954, by 5 powers of ten; the step alone is doubted, by 5 points.
    assert found == pytest.approx((99.08 - 10, 99.08, 100.0), abs=0.01)


def test_an_oil_of_which_less_than_half_is_known_is_not_foretold() -> None:
    assert least_strength(oil(limonene=0.49), 1 / 16, CALIBRATION) is None
    assert least_strength(oil(limonene=0.51), 1 / 16, CALIBRATION)
    assert least_strength(oil(limonene=1), 0.0, CALIBRATION) is None


def test_the_less_is_known_of_an_oil_the_wider_is_its_band() -> None:
    assert doubt(oil(limonene=0.6), 0.1, CALIBRATION) > doubt(oil(limonene=0.9), 0.1, CALIBRATION)
    certain = Solubility("x", 10.8, 10.8, "", 4.57, 0.841, 1.473)
    assert doubt(oil_of([Share(certain, 1, 1)], KNOWN), 0.1, CALIBRATION) == pytest.approx(5)
    assert doubt(oil(limonene=1), 0.1, CALIBRATION) > 5


@given(st.floats(0.5, 1), st.floats(0.01, 0.9), st.floats(0.01, 0.9))
def test_thinner_never_asks_more_strength(share: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    of = oil(limonene=share)
    assert band(of, less).likely <= band(of, more).likely
    assert band(of, less).low <= band(of, less).likely <= band(of, less).high


ONE = Solubility("one", 10.0, 20.0, "", 2.0, 0.8, 1.4)
OTHER = Solubility("other", 40.0, 160.0, "", 4.0, 1.0, 1.5)
"""Invented, with whole figures."""
LAW = Calibration(0.5, 3.0, 2.0)
"""It gains 4 powers of ten at a log K of 2, and 5 at 4."""


def mixed(one: tuple[float, float], other: tuple[float, float] = (0.0, 0.0)) -> Oil:
    return oil_of((Share(ONE, *one), Share(OTHER, *other)), KNOWN)


def test_what_two_constituents_want_together_by_hand() -> None:
    """From the middle of their ranges to 8 · 10⁵ and 10⁶ mg/L, by their shares, 3 to 1.

    Thinned to a sixteenth they want a quarter of the logarithm of sixteen less.
    """
    one, other = log10(8e5) - (1 + log10(20)) / 2, 6 - log10(80)
    wanting = (3 * one + other) / 4
    both = mixed((0.5, 0.7), (0.1, 0.3))
    assert thirst(both, 1.0) == pytest.approx((wanting, 2.5))
    assert thirst(both, 1 / 16) == pytest.approx((wanting - log10(16) / 4, 2.5))
    assert middle(both, 1.0, LAW) == pytest.approx(100 * wanting / (0.5 * 2.5 + 3))
    assert both.known == pytest.approx(0.8)
    assert mixed((0.9, 0.9), (0.9, 0.9)).known == 1.0


def test_the_doubt_of_an_oil_by_hand() -> None:
    """Half a step, and from worst to best over the root of twelve: 100 log 2 / 4 of one alone.

    Of two each end takes the share by which it asks more or less, of the whole that they make.
    """
    alone = doubt(mixed((1.0, 1.0)), 1.0, LAW)
    assert alone == pytest.approx(sqrt(25 + (25 * log10(2)) ** 2 / 12))
    wide = mixed((0.6, 0.8), (0.2, 0.4))
    # One asks more than all together at both ends, the other less.
    worst = 100 * (0.8 * log10(8e4) + 0.2 * log10(25_000)) / (0.8 * 4 + 0.2 * 5)
    best = 100 * (0.6 * log10(4e4) + 0.4 * log10(6_250)) / (0.6 * 4 + 0.4 * 5)
    assert doubt(wide, 1.0, LAW) == pytest.approx(sqrt(25 + (worst - best) ** 2 / 12))


def test_just_half_known_is_enough_and_a_band_ends_where_strengths_do() -> None:
    half = mixed((0.5, 0.5))
    assert least_strength(half, 1.0, LAW)
    assert least_strength(half, 1.001, LAW) is None
    assert least_strength(half, -0.001, LAW) is None
    hard = Calibration(0.5, 0.0, 2.0)
    assert least_strength(half, 1.0, hard) == (100.0, 100.0, 100.0)
    easy = least_strength(half, 1.0, Calibration(0.5, 300.0, 1.0))
    assert easy
    assert easy.low == 0.0 < easy.likely < easy.high < 10
