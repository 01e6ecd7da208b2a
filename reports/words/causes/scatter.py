"""Turbidity against loss of the batches of a trial, as places on a square.

Guarantees: both scales begin at nought and end at a round figure, so that half as far is half as
much; a batch without a reading or a yield is in no scatter.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import floor, log10

from ledger.science.statistics.trials import Jar
from reports.views.causes import Scatter, ScatterPoint

WHOLE = 100
"""All of what went in, per cent."""
TICKS = 4
"""Parts into which a scale is divided."""
ROUND = (1, 2, 4, 5, 8, 10)
"""First digits at which a scale may end."""


def scatter_of(jars: Sequence[Jar]) -> Scatter | None:
    """Return the scatter of a trial; None below two batches with both figures."""
    told = [
        (jar, max(WHOLE - jar.yield_pct, Fraction(0)), jar.ntu)
        for jar in jars
        if jar.yield_pct is not None and jar.ntu is not None
    ]
    if len(told) < 2:
        return None
    most_loss = scale_end(max(loss for _, loss, _ in told))
    most_ntu = scale_end(max(ntu for _, _, ntu in told))
    points = (
        ScatterPoint(float(loss / most_loss), float(ntu / most_ntu), jar.lot, jar.is_control)
        for jar, loss, ntu in told
    )
    return Scatter(tuple(points), _ticks(most_loss), _ticks(most_ntu))


def scale_end(most: Fraction) -> Fraction:
    """Return the round figure at which a scale up to some value ends.

    >>> [str(scale_end(Fraction(n))) for n in (7, 13, 85)], str(scale_end(Fraction(1, 5)))
    (['8', '20', '100'], '1/5')
    """
    if not most:
        return Fraction(1)
    power = Fraction(10) ** floor(log10(most))
    return next(digit * power for digit in ROUND if digit * power >= most)


def _ticks(end: Fraction) -> tuple[tuple[float, str], ...]:
    # As many decimals as the ticks have, and no more.
    digits = next(n for n in range(9) if (end / TICKS * 10**n).denominator == 1)
    return tuple(
        (part / TICKS, f"{float(end * part / TICKS):.{digits}f}") for part in range(TICKS + 1)
    )
