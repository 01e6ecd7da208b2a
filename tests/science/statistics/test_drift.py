"""Drift is told by the neighbours in time, and stretches of time are held against suspects."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.statistics.drift import best_stretch, likelihood, odds_in_time

RUNS = st.lists(st.booleans(), min_size=2, max_size=16)


def test_what_failed_alone_does_not_raise_its_own_odds() -> None:
    odds = odds_in_time([False] * 5 + [True] + [False] * 5)
    assert odds[5] < odds[4]
    assert odds == pytest.approx(odds[::-1])


def test_odds_rise_where_more_failed() -> None:
    odds = odds_in_time([False] * 10 + [False, True, True, True, False, True, True])
    assert max(odds[:8]) < min(odds[11:])


@given(RUNS)
def test_the_best_stretch_is_the_likeliest_of_all(failed: list[bool]) -> None:
    fit, first, end = best_stretch(failed)
    every = {
        (a, b): likelihood(sum(failed[a:b]), b - a, sum(failed), len(failed))
        for a, b in combinations(range(len(failed) + 1), 2)
    }
    assert fit == every[first, end] == max(every.values())


@given(st.integers(0, 6), st.integers(0, 6), st.integers(0, 6), st.integers(0, 6))
def test_a_division_explains_no_worse_than_none(a: int, b: int, c: int, d: int) -> None:
    none = likelihood(0, 0, a + b, a + b + c + d)
    assert likelihood(a, a + c, a + b, a + b + c + d) >= none - 1e-12


def test_the_likelihood_by_hand() -> None:
    """Three of four with it and one of nine without failed: 27/256 and 2^24 / 3^18."""
    expected = (27 / 256) * (2**24 / 3**18)
    assert 2.718281828459045 ** likelihood(3, 4, 4, 13) == pytest.approx(expected)


def test_of_stretches_alike_the_first_of_the_shortest_is_told() -> None:
    assert best_stretch([True, False, True])[1:] == (0, 1)
