"""Control charts of single figures: what a process does by itself, and what it does not.

Guarantees: limits come from how much neighbours in time differ, so that a slow drift does not widen
them; no limit is drawn of too few figures. Refuses: to say why a figure lies outside; it is a
reason to look, not a cause.

References:
    NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individuals control charts) and
    6.3.2.1 (constants for samples of two: d2 = 1.128, D4 = 3.267); ISO 7870-2:2013, Table 2, has
    the same; all from memory.
"""

import itertools
from collections.abc import Sequence
from math import inf

from msgspec import Struct

D2 = 1.128
"""Mean range of two figures from a normal distribution, in its widths."""
D4 = 3.267
"""Upper limit of a range of two, in mean ranges."""
FEWEST = 10
"""No limits of fewer figures (NIST's own example has ten)."""


class Chart(Struct, frozen=True):
    """A chart of individuals and moving ranges."""

    figures: tuple[float, ...]
    """The figures in the order of time."""
    mean: float
    """Their mean."""
    low: float
    """Lower limit of a figure."""
    high: float
    """Upper limit of a figure."""
    mean_range: float
    """Mean difference of neighbours."""
    most_range: float
    """Upper limit of such a difference."""

    @property
    def outside(self) -> tuple[int, ...]:
        """Places of the figures outside the limits."""
        return tuple(
            place
            for place, figure in enumerate(self.figures)
            if not self.low <= figure <= self.high
        )

    @property
    def jumps(self) -> tuple[int, ...]:
        """Places of the figures that differ from the one before by more than the limit."""
        return tuple(
            place + 1
            for place, gap in enumerate(moving_ranges(self.figures))
            if gap > self.most_range
        )


def moving_ranges(figures: Sequence[float]) -> tuple[float, ...]:
    """Return the difference of each figure from the one before.

    >>> moving_ranges([1.0, 3.0, 2.0])
    (2.0, 1.0)
    """
    return tuple(abs(after - before) for before, after in itertools.pairwise(figures))


def chart(figures: Sequence[float], least: float = -inf) -> Chart | None:
    """Return the chart of figures in the order of time; None where there are too few.

    Args:
        figures: The figures.
        least: What none of them can be below, so that no limit is.
    """
    if len(figures) < FEWEST:
        return None
    ranges = moving_ranges(figures)
    mean, mean_range = sum(figures) / len(figures), sum(ranges) / len(ranges)
    reach = 3 * mean_range / D2
    return Chart(
        tuple(figures), mean, max(mean - reach, least), mean + reach, mean_range, D4 * mean_range
    )
