"""The words of the comparison: causes that cannot be told apart, and odds at their level."""

from fractions import Fraction
from math import inf

from msgspec.structs import replace

from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import LEVEL, Cause, Sort
from tests.science.statistics.suspected import suspect


def test_a_suspect_is_all_that_it_cannot_be_told_from() -> None:
    oil, spirit = Cause(Sort.LOT, "OIL-1"), Cause(Sort.LOT, "SPIRIT-1")
    assert replace(suspect(oil), not_separable_from=(spirit,)).causes == (oil, spirit)


def test_odds_are_those_of_its_strata() -> None:
    """Two strata of 1, 1, 1, 3: Mantel-Haenszel by hand is (3 / 6) * 2 / ((1 / 6) * 2)."""
    told = replace(suspect(), strata=(("a", Table(1, 1, 1, 3)), ("b", Table(1, 1, 1, 3))))
    pooled = told.pooled(LEVEL).odds
    assert pooled is not None
    assert round(pooled.ratio, 9) == 3
    assert told.odds(Fraction(1, 20)).ratio > 1
    assert suspect().odds(LEVEL).ratio == inf
