"""How strongly failing goes with a suspect: odds, intervals, exact and Mantel-Haenszel tests.

Guarantees: the exact test holds all margins fixed, over one table or several; the Mantel-Haenszel
figures pool the tables of strata that may differ in how often they fail. Refuses: to give odds
where the counts give none; they are infinite, zero or None.

References:
    Mantel and Haenszel, J. Natl. Cancer Inst. 22 (1959) 719; Robins, Breslow and Greenland,
    Biometrics 42 (1986) 311, for the variance of the common odds (both from memory).
"""

from collections.abc import Sequence
from fractions import Fraction
from math import erfc, exp, inf, log, sqrt
from statistics import NormalDist

from msgspec import Struct

from ledger.science.statistics.exact import (
    Table,
    counts_of,
    likeliest_odds,
    odds_interval,
    two_sided,
)


class Odds(Struct, frozen=True):
    """An odds ratio with its interval."""

    ratio: float
    """How many times greater the odds of failing are with the suspect; may be infinite."""
    low: float
    """Lower end of its interval."""
    high: float
    """Upper end; may be infinite."""


class Pooled(Struct, frozen=True):
    """What the Mantel-Haenszel method makes of several strata."""

    odds: Odds | None
    """The common odds ratio; None when no stratum tells anything of it."""
    chi_square: float
    """The test statistic on one degree of freedom, with the correction for continuity."""
    p: float
    """The chance of so great a statistic or a greater, when the suspect makes no difference."""
    strata: int
    """How many strata tell anything."""


def fisher(table: Table) -> Fraction:
    """Return Fisher's exact p of one table, two-sided.

    >>> fisher(Table(4, 0, 0, 4))
    Fraction(1, 35)
    """
    return two_sided(counts_of([table]))


def exact_odds(tables: Sequence[Table], level: float) -> Odds:
    """Return the conditional odds ratio over the tables, with its exact interval."""
    counts = counts_of(tables)
    low, high = odds_interval(counts, level)
    return Odds(likeliest_odds(counts), low, high)


def mantel_haenszel(tables: Sequence[Table], level: float, *, corrected: bool = True) -> Pooled:
    """Return the common odds ratio of strata, its interval and the test that it is one.

    Args:
        tables: One table a stratum; those that tell nothing are left out.
        level: What lies outside the interval, such as 0.05 for 95 %.
        corrected: Whether the statistic is corrected for continuity.
    """
    telling = [table for table in tables if table.is_telling]
    if not telling:
        return Pooled(None, 0.0, 1.0, 0)
    gap = abs(sum(table.failed_with - _expected(table) for table in telling))
    gap = max(0.0, gap - 0.5) if corrected else gap
    chi_square = gap**2 / sum(_variance(table) for table in telling)
    p = erfc(sqrt(chi_square / 2))
    return Pooled(_common_odds(telling, level), chi_square, p, len(telling))


def _expected(table: Table) -> float:
    return table.failed * table.with_it / table.lots


def _variance(table: Table) -> float:
    without = table.lots - table.with_it
    product = table.failed * table.clear * table.with_it * without
    return product / (table.lots**2 * (table.lots - 1))


def _common_odds(tables: Sequence[Table], level: float) -> Odds:
    # Of a table that tells anything one of both is above nothing.
    agree = [table.failed_with * table.clear_without / table.lots for table in tables]
    differ = [table.failed_without * table.clear_with / table.lots for table in tables]
    for_it, against = sum(agree), sum(differ)
    if not against:
        return Odds(inf, 0.0, inf)
    if not for_it:
        return Odds(0.0, 0.0, inf)
    spread = NormalDist().inv_cdf(1 - level / 2) * sqrt(_log_variance(tables, agree, differ))
    middle = log(for_it / against)
    return Odds(exp(middle), exp(middle - spread), exp(middle + spread))


def _log_variance(
    tables: Sequence[Table], agree: Sequence[float], differ: Sequence[float]
) -> float:
    along = [(table.failed_with + table.clear_without) / table.lots for table in tables]
    across = [(table.failed_without + table.clear_with) / table.lots for table in tables]
    for_it, against = sum(agree), sum(differ)
    rows = list(zip(along, across, agree, differ, strict=True))
    first = sum(p * r for p, _, r, _ in rows) / (2 * for_it**2)
    middle = sum(p * s + q * r for p, q, r, s in rows) / (2 * for_it * against)
    last = sum(q * s for _, q, _, s in rows) / (2 * against**2)
    return first + middle + last
