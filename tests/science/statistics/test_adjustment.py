"""Many suspects are allowed for."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import false_discovery_control

from ledger.science.statistics.adjustment import holm, worth_testing

SHARES = st.fractions(0, 1, max_denominator=1000)


@given(st.lists(SHARES, min_size=1, max_size=12))
def test_holm_is_no_laxer_than_it_says(values: list[Fraction]) -> None:
    """Each adjusted p lies between p and Bonferroni's, at or above Benjamini and Hochberg's."""
    adjusted = holm(values)
    milder = false_discovery_control([float(p) for p in values])
    for p, found, mild in zip(values, adjusted, milder, strict=True):
        assert p <= found <= min(Fraction(1), p * len(values))
        assert found >= Fraction(mild) - Fraction(1, 10**9)
    pairs = sorted(zip(values, adjusted, strict=True))
    assert [found for _, found in pairs] == sorted(adjusted)


def test_holm_as_worked_by_hand() -> None:
    """p.adjust(c(0.01, 0.02, 0.03, 0.04), "holm") is 0.04 0.06 0.06 0.06 in R (from memory)."""
    found = holm([Fraction(n, 100) for n in (1, 2, 3, 4)])
    assert found == tuple(Fraction(n, 100) for n in (4, 6, 6, 6))


@given(st.lists(SHARES, max_size=15))
def test_all_that_are_tested_could_stand_out_among_them(least: list[Fraction]) -> None:
    level = Fraction(1, 20)
    chosen = worth_testing(least, level)
    assert all(least[place] * len(chosen) <= level for place in chosen)


def test_what_could_never_stand_out_does_not_weigh() -> None:
    least = [Fraction(1, 126), *[Fraction(1, 9)] * 40]
    assert worth_testing(least, Fraction(1, 20)) == (0,)
    assert worth_testing([Fraction(1, 9)] * 40, Fraction(1, 20)) == ()


def test_no_adjusted_chance_is_more_than_one_and_a_bound_just_reached_is_enough() -> None:
    level = Fraction(1, 20)
    assert holm([Fraction(3, 4), Fraction(4, 5)]) == (Fraction(1), Fraction(1))
    assert holm([Fraction(4, 5), Fraction(1, 10)]) == (Fraction(4, 5), Fraction(1, 5))
    assert worth_testing([level], level) == (0,)
    assert worth_testing([level / 2, level / 2], level) == (0, 1)
    assert worth_testing([level / 2, level], level) == (0,)
    assert worth_testing([], level) == ()
