"""What failing could have been by chance: which units fail, dealt anew within strata.

Guarantees: the number that fail in a stratum stays as it was; the chance of each unit may differ
(its odds), as it does under drift; few outcomes are all looked at, of many a fixed sample is drawn,
so that one book always gets one answer. Refuses: odds of nought.

References:
    Chen, Dempster and Liu, Weighted finite population sampling, Biometrika 81 (1994) 457: drawing
    so many of unequal odds (from memory).
    Westfall and Young, Resampling-based multiple testing, 1993: the smallest p of many (from
    memory).
"""

from collections.abc import Iterator, Sequence
from itertools import accumulate, chain, combinations, product
from math import comb, prod

from msgspec import Struct

from ledger.science.statistics.stream import uniform

MOST_LISTED = 1000
"""Up to so many outcomes are all looked at."""
SEED = 18
"""Where the drawing starts; any fixed number serves."""


class Stratum(Struct, frozen=True):
    """Units that are compared with each other."""

    places: tuple[int, ...]
    """Their places."""
    failures: int
    """How many of them failed."""


def strata_of(masks: Sequence[int], failed: int) -> tuple[Stratum, ...]:
    """Return strata from the bits of their units and of the units that failed."""
    return tuple(
        Stratum(
            tuple(place for place in range(mask.bit_length()) if mask >> place & 1),
            (mask & failed).bit_count(),
        )
        for mask in masks
    )


def symmetric(odds: Sequence[float], most: int) -> list[float]:
    """Return the elementary symmetric sums of some odds, up to an order.

    >>> symmetric([1.0, 2.0, 3.0], 2)
    [1.0, 6.0, 11.0]
    """
    sums = [1.0] + [0.0] * most
    for one in odds:
        for order in range(most, 0, -1):
            sums[order] += one * sums[order - 1]
    return sums


def tails(mask: int, strata: Sequence[Stratum], odds: Sequence[float] | None) -> list[float]:
    """Return for each count of failed units with something the chance of it or more.

    Args:
        mask: Bits of the units that have it.
        strata: What is compared with what.
        odds: The odds of each unit to fail; None: all alike.
    """
    shares = [1.0]
    for stratum in strata:
        shares = _folded(shares, _shares(mask, stratum, odds))
    sums = list(accumulate(reversed(shares)))
    return [each / sums[-1] for each in reversed(sums)]


def _shares(mask: int, stratum: Stratum, odds: Sequence[float] | None) -> list[float]:
    failures = stratum.failures
    if odds is None:
        having = sum(mask >> place & 1 for place in stratum.places)
        lacking = len(stratum.places) - having
        whole = comb(len(stratum.places), failures)
        return [comb(having, n) * comb(lacking, failures - n) / whole for n in range(failures + 1)]
    with_it = symmetric([odds[n] for n in stratum.places if mask >> n & 1], failures)
    without = symmetric([odds[n] for n in stratum.places if not mask >> n & 1], failures)
    parts = [with_it[n] * without[failures - n] for n in range(failures + 1)]
    return [part / sum(parts) for part in parts]


def _folded(one: Sequence[float], other: Sequence[float]) -> list[float]:
    out = [0.0] * (len(one) + len(other) - 1)
    for place, share in enumerate(one):
        for further, times in enumerate(other):
            out[place + further] += share * times
    return out


def outcomes(
    strata: Sequence[Stratum], seen: int, odds: Sequence[float] | None, drawn: int
) -> Iterator[int]:
    """Return which units fail, as bits, in outcomes that are equally likely.

    Args:
        strata: What is compared with what.
        seen: The outcome that was seen; it is among them.
        odds: The odds of each unit to fail; None: all alike.
        drawn: Of many outcomes so many are drawn, and the one seen is added.
    """
    number = prod(comb(len(one.places), one.failures) for one in strata)
    if odds is None and number <= MOST_LISTED:
        ways = [
            [sum(1 << n for n in places) for places in combinations(one.places, one.failures)]
            for one in strata
        ]
        return (sum(each) for each in product(*ways))
    shares = uniform(SEED)
    drawers = [_drawer(one, odds, shares) for one in strata]
    return chain([seen], (sum(next(drawer) for drawer in drawers) for _ in range(drawn)))


def _drawer(
    stratum: Stratum, odds: Sequence[float] | None, shares: Iterator[float]
) -> Iterator[int]:
    weights = [1.0 if odds is None else odds[n] for n in stratum.places]
    steps = _steps(stratum, weights)
    while True:
        left, bits = stratum.failures, 0
        for bit, whole, part in steps:
            if next(shares) * whole[left] < part[left]:
                bits |= bit
                left -= 1
                if not left:
                    break
        yield bits


def _steps(
    stratum: Stratum, weights: Sequence[float]
) -> list[tuple[int, list[float], list[float]]]:
    """Return for each unit, the last first, its bit and what tells whether it is drawn.

    It is drawn where a share of the whole is below its part, both by how many are left to draw.
    """
    sums = [1.0] + [0.0] * stratum.failures
    steps = []
    for weight, place in zip(weights, stratum.places, strict=True):
        part = [0.0, *(weight * each for each in sums[:-1])]
        sums = [each + more for each, more in zip(sums, part, strict=True)]
        steps.append((1 << place, sums, part))
    return steps[::-1]
