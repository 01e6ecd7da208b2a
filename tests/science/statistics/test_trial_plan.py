"""The cheapest trial that tells suspects apart reaches the level, and no cheaper one does."""

from fractions import Fraction

import pytest

from ledger.science.statistics.suspects import LEVEL
from ledger.science.statistics.trial_plan import jars_needed
from tests.science.statistics.judged import lot, split


def test_the_trial_that_separates_two_suspects_reaches_the_level() -> None:
    trial = split(("OIL", "CARB"), ()).crossing
    assert trial is not None
    assert (trial.arms, trial.has_control) == ((lot("CARB"), lot("OIL")), False)
    assert (trial.jars_each, trial.jars) == (4, 8)
    assert trial.p == Fraction(1, 35)


@pytest.mark.parametrize("arms", [2, 3, 4, 6])
def test_fewer_jars_would_not_reach_it(arms: int) -> None:
    jars, p = jars_needed(arms, LEVEL)
    assert p <= LEVEL
    assert jars_needed(arms, p - Fraction(1, 10**6))[0] > jars
