"""How many jars a trial needs to find a cause with a stated chance.

Guarantees: by clear or cloudy the chance is exact, of the very test that will judge; where a meter
decides it is the lower end of what trials drawn by a fixed rule come to, so that the same question
always has the same answer. Refuses: more jars than anybody makes for one question.

References:
    For the meter: the failing shares are taken for two normal distributions of one width cut at
    one limit (the probit model; common practice, no source).
"""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import combinations_with_replacement, takewhile
from math import comb, factorial, prod, sqrt
from operator import eq
from statistics import NormalDist

from msgspec import Struct

from ledger.science.statistics.designs import evenings, unit_size
from ledger.science.statistics.randomisation import folded, sums_of

MOST_JARS = 48
"""No trial is larger."""
TRIALS = 1000
"""Trials drawn for a meter: a chance of 90 % is then known to two points."""
_STEP, _MORE, _TURN = 6364136223846793005, 1442695040888963407, 2**64
"""Of the linear congruential rule by which trials are drawn (Knuth's MMIX; from memory)."""

Shares = tuple[dict[int, int], dict[int, float]]
"""In how many ways jars with the cause are so many of those that failed, and with what chance."""


class Rates(Struct, frozen=True):
    """How often jars fail."""

    with_cause: float
    """The share that fails where the cause is at its suspected level."""
    without: float
    """The share that fails otherwise."""


class Size(Struct, frozen=True):
    """How large a trial is."""

    evenings: tuple[int, ...]
    """Jars of each evening."""
    chance: float
    """Chance that it shows the cause."""

    @property
    def jars(self) -> int:
        """How many jars in all."""
        return sum(self.evenings)


def size_for(
    factors: int, rates: Rates, level: Fraction, chance: float, most: int, *, by_ntu: bool
) -> Size | None:
    """Return the smallest trial that shows a cause with a chance; None when none does.

    Args:
        factors: How many suspects it tries.
        rates: How often jars fail.
        level: The level it will be judged at.
        chance: The chance wanted.
        most: Most jars an evening.
        by_ntu: Whether a meter decides, not clear or cloudy.
    """
    for units in range(1, MOST_JARS // unit_size(factors) + 1):
        told = Size(evenings(factors, units, most), 0.0)
        reached = chance_of(told.evenings, factors, rates, level, by_ntu=by_ntu)
        if reached >= chance:
            return Size(told.evenings, reached)
    return None


def chance_of(
    jars: Sequence[int], factors: int, rates: Rates, level: Fraction, *, by_ntu: bool
) -> float:
    """Return the chance that a trial shows the one cause among its suspects.

    Args:
        jars: Jars of each evening, half of them at the suspected level.
        factors: How many suspects it tries.
        rates: How often jars fail.
        level: The level it will be judged at.
        by_ntu: Whether a meter decides.
    """
    bound = level / factors
    if by_ntu:
        return _by_ntu(tuple(sorted(jars)), rates, bound)
    return _by_looks(tuple(sorted(jars)), rates, bound)


@lru_cache(maxsize=256)
def _by_looks(jars: tuple[int, ...], rates: Rates, bound: Fraction) -> float:
    one = {
        (size, total): _evening(size // 2, total, rates)
        for size in set(jars)
        for total in range(size + 1)
    }
    found = 0.0
    before: tuple[int, ...] = ()
    # After no evening and after each of them, as far as they are those of the numbers before.
    after: list[Shares] = [({0: 1}, {0: 1.0})]
    for failed, times in _totals(jars):
        same = sum(takewhile(bool, map(eq, before, failed)))
        del after[same + 1 :]
        for evening in zip(jars[same:], failed[same:], strict=True):
            ways, shares = one[evening]
            after.append((folded(after[-1][0], ways), folded(after[-1][1], shares)))
        by_chance, in_truth = after[-1]
        least = _least(by_chance, bound)
        found += times * sum(
            share for count, share in in_truth.items() if least is not None and count >= least
        )
        before = failed
    return found


def _evening(half: int, total: int, rates: Rates) -> Shares:
    """Return those of an evening of which so many jars fail."""
    counts = range(max(0, total - half), min(half, total) + 1)
    return (
        {count: comb(half, count) * comb(half, total - count) for count in counts},
        {count: _share(half, count, total, rates) for count in counts},
    )


def _least(ways: Mapping[int, int], bound: Fraction) -> int | None:
    """Return the least total that chance reaches or passes within the bound; None when none."""
    every, above, least = sum(ways.values()), 0, None
    for total in sorted(ways, reverse=True):
        above += ways[total]
        if Fraction(above, every) > bound:
            break
        least = total
    return least


def _share(half: int, failed_with: int, total: int, rates: Rates) -> float:
    without = total - failed_with
    return prod(
        comb(half, failed) * rate**failed * (1 - rate) ** (half - failed)
        for failed, rate in ((failed_with, rates.with_cause), (without, rates.without))
    )


def _totals(jars: tuple[int, ...]) -> Iterator[tuple[tuple[int, ...], int]]:
    """Yield how many jars may fail on each evening, and for how many orders of evenings it stands.

    Evenings of one size are alike, so one order of their numbers stands for all.
    """
    sizes = sorted(set(jars))
    alike = [
        list(combinations_with_replacement(range(size + 1), jars.count(size))) for size in sizes
    ]

    def orders(numbers: tuple[int, ...]) -> int:
        return factorial(len(numbers)) // prod(factorial(numbers.count(n)) for n in set(numbers))

    def walk(place: int) -> Iterator[tuple[tuple[int, ...], int]]:
        if place == len(alike):
            yield (), 1
            return
        for numbers in alike[place]:
            for rest, times in walk(place + 1):
                yield (*numbers, *rest), times * orders(numbers)

    return walk(0)


@lru_cache(maxsize=256)
def _by_ntu(jars: tuple[int, ...], rates: Rates, bound: Fraction) -> float:
    least = _least(_null(jars), bound)
    if least is None:
        return 0.0
    normal = NormalDist()
    shift = normal.inv_cdf(rates.with_cause) - normal.inv_cdf(rates.without)
    numbers = _numbers()
    found = 0
    for _ in range(TRIALS):
        total = 0
        for size in jars:
            drawn = [normal.inv_cdf(next(numbers)) for _ in range(size)]
            half = size // 2
            moved = [value + shift for value in drawn[:half]]
            ordered = sorted((*moved, *drawn[half:]))
            total += sum(ordered.index(value) + 1 for value in moved)
        found += total >= least
    share = found / TRIALS
    # Two standard errors less, so that what is promised is no luck of the trials drawn.
    return max(0.0, share - 2 * sqrt(share * (1 - share) / TRIALS))


def _null(jars: Sequence[int]) -> dict[int, int]:
    ways: dict[int, int] = {0: 1}
    for size in jars:
        ways = folded(ways, sums_of(range(1, size + 1), size // 2))
    return ways


def _numbers() -> Iterator[float]:
    """Yield numbers between 0 and 1 that look drawn, the same ones every time."""
    state = 1
    while True:
        state = (state * _STEP + _MORE) % _TURN
        yield ((state >> 11) + 0.5) / 2**53
