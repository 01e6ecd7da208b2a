"""How a maker's own readings narrow a forecast, whatever the errors are like.

Guarantees: with readings of the same bench the next one lies in the band at the rate that is told,
exactly, as long as it comes from the same bench as those before (split conformal). Refuses: to
narrow on fewer readings than tell anything.

References:
    Vovk, Gammerman and Shafer, Algorithmic Learning in a Random World, 2005 (from memory): of n
    readings and the next one each is as likely as any other to be the greatest; so the next lies
    between the k-th least and the k-th greatest of n with chance (n + 1 - 2k)/(n + 1).
"""

from collections.abc import Sequence
from fractions import Fraction

from msgspec import Struct

FEWEST = 10
"""Readings from which a band is narrowed: nine of eleven."""
WANTED = Fraction(95, 100)
"""How sure a band is meant to be, once there are readings enough."""


class Narrowed(Struct, frozen=True):
    """How readings lie about the middle of what was foretold."""

    least: float
    """The least that a reading is of the middle foretold, as a factor."""
    most: float
    """The most."""
    readings: int
    """How many readings there are."""
    chance: Fraction
    """How sure it is that the next lies between."""


def narrowed(ratios: Sequence[float]) -> Narrowed | None:
    """Return the factors between which the next reading lies; None while readings are too few.

    Args:
        ratios: For each reading, what was read over the middle of what was foretold.

    >>> narrowed([1.0] * 9), narrowed([float(n) for n in range(1, 11)]).chance
    (None, Fraction(9, 11))
    """
    if len(ratios) < FEWEST:
        return None
    ordered = sorted(ratios)
    count = len(ordered)
    cut = max(1, int((count + 1) * (1 - WANTED) / 2))
    return Narrowed(
        ordered[cut - 1], ordered[-cut], count, Fraction(count + 1 - 2 * cut, count + 1)
    )
