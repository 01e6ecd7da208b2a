"""The size of a trial is the least that finds a cause with the chance told."""

from fractions import Fraction
from itertools import product

import pytest
from scipy import stats

from ledger.science.statistics.designs import unit_size
from ledger.science.statistics.power import Rates, chance_of, size_for
from ledger.science.statistics.suspects import LEVEL
from tests.benchmarks.planned_trials import World, share

USUAL = Rates(0.9, 0.05)


def test_the_chance_by_looks_is_that_of_every_outcome_counted_out() -> None:
    """Scipy's binomial and Fisher's exact test are the oracle."""
    wanted = 0.0
    for failed_with, failed_without in product(range(7), repeat=2):
        table = [[failed_with, 6 - failed_with], [failed_without, 6 - failed_without]]
        p = stats.fisher_exact(table, alternative="greater").pvalue
        if p * 3 <= float(LEVEL) + 1e-12:
            wanted += stats.binom.pmf(failed_with, 6, 0.9) * stats.binom.pmf(
                failed_without, 6, 0.05
            )
    assert chance_of((12,), 3, USUAL, LEVEL, by_ntu=False) == pytest.approx(wanted)


@pytest.mark.parametrize("jars", [(2,), (4, 2), (4, 4, 2)])
def test_where_any_outcome_would_do_it_is_as_sure_as_all_of_them_together(
    jars: tuple[int, ...],
) -> None:
    """The chances of all outcomes come to one, also of those where none fails and where all do."""
    for rates in (USUAL, Rates(0.99, 0.9), Rates(0.1, 0.01)):
        assert chance_of(jars, 1, rates, Fraction(1), by_ntu=False) == pytest.approx(1.0)


def test_three_in_one_factorial_take_sixteen_jars_by_looks_and_fewer_by_a_meter() -> None:
    by_looks = size_for(3, USUAL, LEVEL, 0.9, 8, by_ntu=False)
    by_ntu = size_for(3, Rates(0.9, 0.02), LEVEL, 0.9, 8, by_ntu=True)
    assert by_looks is not None
    assert by_ntu is not None
    assert (by_looks.evenings, by_ntu.jars) == ((8, 8), 12)
    assert 0.9 <= by_looks.chance < 0.95
    assert chance_of((8,), 3, USUAL, LEVEL, by_ntu=False) < 0.6


def test_four_and_four_find_it_in_two_of_three() -> None:
    """Four jars with and four without, all to fail and none: 0.9^4 is 0.66."""
    chance = chance_of((8,), 1, Rates(0.9, 0.0), Fraction(1, 40), by_ntu=False)
    assert chance == pytest.approx(0.9**4)


@pytest.mark.parametrize("factors", [1, 2, 3, 4])
def test_one_unit_less_would_not_do(factors: int) -> None:
    size = size_for(factors, USUAL, LEVEL, 0.9, 64, by_ntu=False)
    assert size is not None
    less = (size.jars - unit_size(factors),)
    assert size.chance >= 0.9 > chance_of(less, factors, USUAL, LEVEL, by_ntu=False)


def test_what_fails_hardly_more_often_than_all_else_is_not_promised() -> None:
    assert size_for(3, Rates(0.5, 0.4), LEVEL, 0.9, 16, by_ntu=False) is None


def test_the_chance_by_a_meter_is_the_same_every_time_and_near_the_drawn_one() -> None:
    """Numpy draws the same trials with another generator; scipy ranks and tests them."""
    import numpy

    drawn = numpy.random.default_rng(5)
    shift = stats.norm.ppf(0.9) - stats.norm.ppf(0.05)
    shown = 0
    for _ in range(400):
        with_it, without = drawn.normal(shift, 1, 5), drawn.normal(0, 1, 5)
        p = stats.mannwhitneyu(with_it, without, alternative="greater", method="exact").pvalue
        shown += p * 2 <= 0.05
    told = chance_of((10,), 2, USUAL, LEVEL, by_ntu=True)
    assert told == chance_of((10,), 2, USUAL, LEVEL, by_ntu=True)
    assert told == pytest.approx(shown / 400, abs=0.06)


@pytest.mark.parametrize("by_ntu", [False, True])
def test_the_jars_that_were_planned_name_the_cause_in_nine_of_ten_trials(by_ntu: bool) -> None:
    """Two thousand of each kind are made by `python -m tests.benchmarks.planned_trials`."""
    found = share(World(3, True, 0.05, by_ntu, 0.0), 100)
    assert found.named >= 0.9
    assert found.innocent <= 0.05


@pytest.mark.parametrize(
    ("jars", "rates", "shown"),
    [
        ((8,), USUAL, 930),
        ((8, 8), USUAL, 1000),
        ((12,), Rates(0.8, 0.2), 838),
        ((6, 6), Rates(0.7, 0.1), 863),
    ],
)
def test_the_chance_by_a_meter_is_two_standard_errors_below_the_share_of_a_thousand_trials(
    jars: tuple[int, ...], rates: Rates, shown: int
) -> None:
    """The shares are those of the trials that the module's rule draws, as it drew them before."""
    share_shown = shown / 1000
    less = 2 * (share_shown * (1 - share_shown) / 1000) ** 0.5
    told = chance_of(jars, 1, rates, LEVEL, by_ntu=True)
    assert told == pytest.approx(share_shown - less, abs=1e-12)
