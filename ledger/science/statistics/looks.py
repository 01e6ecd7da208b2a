"""Asked again and again: what is left of the level when every failure counts as an asking.

Guarantees: the level left never grows with the number of failures, and from `EVEN` failures on it
falls to a third and a little more each time they double, so that what is spent in all has an end.
Refuses: to know how often the book was asked; every failure on record counts.

Two askings of nearly the same book nearly always agree; how often they can disagree grows with the
logarithm of the failures, not with their number, so a level that falls with each doubling is spent
but once. The figures are set by the simulation in `tests/benchmarks/innocent.py`, which counts the
books that ever name an innocent.
"""

from fractions import Fraction

FIRST = Fraction(4, 5)
"""The share of the level that is there from the beginning."""
EVEN = 5
"""Up to so many failures it stays the same."""
FALL = 1.5
"""The power of the number of failures by which it falls then."""


def share_left(failures: int) -> Fraction:
    """Return which share of the level is left after some failures.

    >>> share_left(3), share_left(20), share_left(80)
    (Fraction(4, 5), Fraction(1, 10), Fraction(1, 80))
    """
    return FIRST * Fraction(min(1.0, (EVEN / max(failures, 1)) ** FALL)).limit_denominator(10**6)
