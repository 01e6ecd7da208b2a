"""Drift: how the chance of failing went up and down with time, and what simply followed in time.

Guarantees: the chance of a unit is told by its neighbours in time and not by itself; anything that
is no likelier than some stretch of time is not told apart from it. Refuses: to tell what was used
in one stretch only from the stretch.

References:
    Nadaraya, Theory Probab. Appl. 9 (1964) 141; Watson, Sankhya A 26 (1964) 359: the mean of
    neighbours, weighted by how near they are (from memory).
"""

from collections.abc import Sequence
from math import exp, log

REACH = 0.25
"""How far neighbours tell of each other, as a share of all units."""
LEAST_REACH = 2.0
"""They do so at least so many units far."""
FLOOR = 0.03
"""No chance is taken to be nearer to none or to all."""
MARGIN = log(3)
"""What explains the failures less than three times as well as another is not told from it."""


def odds_in_time(failed: Sequence[bool]) -> list[float]:
    """Return the odds of each unit to fail, as its neighbours in time tell.

    Args:
        failed: Whether each failed, by when they were begun.

    >>> odds = odds_in_time([False] * 6 + [True] * 6)
    >>> odds[0] < odds[4] < odds[7] < odds[11]
    True
    """
    reach = max(LEAST_REACH, REACH * len(failed))
    near = [exp(-((gap / reach) ** 2) / 2) for gap in range(len(failed))]
    mean = sum(failed) / len(failed)
    return [_odds(_chance(place, failed, near, mean)) for place in range(len(failed))]


def _chance(place: int, failed: Sequence[bool], near: Sequence[float], mean: float) -> float:
    # Its own outcome is left out: it would tell of itself what is to be explained.
    weights = [near[abs(place - n)] if n != place else 0.0 for n in range(len(failed))]
    told = sum(weight for weight, is_failed in zip(weights, failed, strict=True) if is_failed)
    return (mean + told) / (1 + sum(weights))


def _odds(chance: float) -> float:
    kept = min(1 - FLOOR, max(FLOOR, chance))
    return kept / (1 - kept)


def likelihood(failed_with: int, having: int, failures: int, units: int) -> float:
    """Return the logarithm of how well it explains the failures that those with it fail more.

    >>> likelihood(2, 2, 2, 5)
    0.0
    >>> round(likelihood(1, 2, 2, 4), 3) == round(likelihood(0, 0, 2, 4), 3)
    True
    """
    lacking = units - having
    if not having or not lacking or failed_with * lacking <= (failures - failed_with) * having:
        return _fit(failures, units)
    return _fit(failed_with, having) + _fit(failures - failed_with, lacking)


def _fit(failed: int, units: int) -> float:
    if failed in (0, units):
        return 0.0
    share = failed / units
    return failed * log(share) + (units - failed) * log(1 - share)


def best_stretch(failed: Sequence[bool]) -> tuple[float, int, int]:
    """Return how well the best stretch of time explains the failures, and where it is.

    Returns:
        The logarithm of the likelihood, the first unit of the stretch, and the one after its last.

    >>> best_stretch([False, True, True, False, False])
    (0.0, 1, 3)
    """
    sums = [0]
    for is_failed in failed:
        sums.append(sums[-1] + is_failed)
    units = len(failed)
    return max(
        (
            (likelihood(sums[end] - sums[first], end - first, sums[-1], units), first, end)
            for first in range(units)
            for end in range(first + 1, units + 1)
        ),
        key=lambda found: (found[0], -found[2] + found[1]),
    )
