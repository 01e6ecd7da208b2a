"""Intervals for a new batch are right for small numbers."""

from fractions import Fraction
from itertools import permutations

import pytest
from scipy import stats

from ledger.science.statistics.intervals import ahead, share_interval


def test_the_next_figure_is_held_as_often_as_told_in_every_order() -> None:
    """Of ten figures each may be the next, and all are equally likely to be."""
    figures = [1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 64.0, 128.0, 256.0, 512.0]
    held, chance = 0, Fraction(0)
    for last in figures:
        found = ahead([figure for figure in figures if figure != last])
        assert found is not None
        held, chance = held + (found.low <= last <= found.high), found.chance
    assert Fraction(held, 10) == chance == Fraction(4, 5)
    assert ahead(figures[:8]) is None
    assert {ahead(list(order)) for order in permutations([1.0, 2.0, 3.0])} == {None}


@pytest.mark.parametrize(("failed", "lots"), [(0, 5), (1, 6), (3, 8), (6, 6), (12, 40)])
def test_a_share_has_the_exact_interval(failed: int, lots: int) -> None:
    """Scipy's exact interval is the oracle."""
    oracle = stats.binomtest(failed, lots).proportion_ci(0.95, "exact")
    assert share_interval(failed, lots) == pytest.approx((oracle.low, oracle.high))
