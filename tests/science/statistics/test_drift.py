"""Drift is told by the neighbours in time, and stretches of time are held against suspects."""

from itertools import combinations
from math import exp, log

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


def test_the_odds_of_three_units_by_hand() -> None:
    """Neighbours two units of reach: one away weighs e^(-1/8), two away e^(-1/2), the mean 1."""
    near, far = exp(-1 / 8), exp(-1 / 2)
    chances = (
        (1 / 3) / (1 + near + far),
        (1 / 3 + near) / (1 + 2 * near),
        (1 / 3 + far) / (1 + near + far),
    )
    assert odds_in_time([True, False, False]) == pytest.approx([p / (1 - p) for p in chances])


def test_neighbours_tell_of_a_quarter_of_all_units() -> None:
    """Of twelve units that are three: the last is eleven away from the one that failed."""
    weights = [exp(-((gap / 3) ** 2) / 2) for gap in range(1, 12)]
    chance = (1 / 12 + weights[-1]) / (1 + sum(weights))
    assert chance < 0.03
    assert odds_in_time([True] + [False] * 11)[-1] == pytest.approx(3 / 97)
    chance = (1 / 12 + weights[0]) / (1 + weights[0] + sum(weights[:10]))
    assert odds_in_time([True] + [False] * 11)[1] == pytest.approx(chance / (1 - chance))


def test_no_chance_is_nearer_to_none_or_all_than_three_in_a_hundred() -> None:
    assert odds_in_time([True] * 4) == pytest.approx([97 / 3] * 4)
    assert odds_in_time([False] * 4) == pytest.approx([3 / 97] * 4)


def test_what_fails_as_often_without_it_explains_what_the_whole_does() -> None:
    """Two of four, one of two with it or less: (1/2)^4; a part in which all fail costs nothing."""
    whole = 4 * log(1 / 2)
    assert [likelihood(k, n, 2, 4) for k, n in ((1, 2), (0, 2), (0, 0), (2, 4))] == [whole] * 4
    assert likelihood(1, 3, 3, 5) == likelihood(0, 0, 3, 5) == 3 * log(3 / 5) + 2 * log(2 / 5)
    assert likelihood(2, 3, 2, 4) == pytest.approx(2 * log(2 / 3) + log(1 / 3))
    assert likelihood(1, 1, 2, 4) == pytest.approx(log(1 / 3) + 2 * log(2 / 3))
