"""What a new batch may be expected to show, of few batches before it.

Guarantees: an interval for a figure holds the next one with the chance told, whatever the figures
are distributed like, as long as the order of the batches does not matter (conformal); one for a
share is exact (Clopper and Pearson). Refuses: an interval that so few figures cannot give.

References:
    Wilks, Determination of sample sizes for setting tolerance limits, Ann. Math. Statist. 12 (1941)
    91; Clopper and Pearson, Biometrika 26 (1934) 404; both from memory.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import comb

from msgspec import Struct

CHANCE = Fraction(4, 5)
"""The chance an interval for the next figure holds it, at least: nine figures can give that."""
HALVINGS = 60


class Ahead(Struct, frozen=True):
    """Between which figures the next lies."""

    low: float
    """Lower end."""
    high: float
    """Upper end."""
    chance: Fraction
    """How often it holds the next figure, at least."""


def ahead(figures: Sequence[float], chance: Fraction = CHANCE) -> Ahead | None:
    """Return an interval for the next figure; None where there are too few.

    >>> ahead([3.0, 1.0, 2.0]) is None
    True
    >>> ahead([float(n) for n in range(9)])
    Ahead(low=0.0, high=8.0, chance=Fraction(4, 5))
    """
    count = len(figures)
    cut = int((1 - chance) * (count + 1) / 2)
    if cut < 1:
        return None
    ordered = sorted(figures)
    return Ahead(ordered[cut - 1], ordered[-cut], 1 - Fraction(2 * cut, count + 1))


def share_interval(failed: int, lots: int, level: float = 0.05) -> tuple[float, float]:
    """Return the exact interval of a share: each tail holds half the level."""
    half = level / 2
    low = _where(lambda share: _at_least(failed, lots, share) - half) if failed else 0.0
    high = (
        1 - _where(lambda share: _at_least(lots - failed, lots, share) - half)
        if failed < lots
        else 1.0
    )
    return low, high


def _at_least(failed: int, lots: int, share: float) -> float:
    return sum(
        comb(lots, count) * share**count * (1 - share) ** (lots - count)
        for count in range(failed, lots + 1)
    )


def _where(rising: Callable[[float], float]) -> float:
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if rising(middle) > 0 else (middle, high)
    return (low + high) / 2
