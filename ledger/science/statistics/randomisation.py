"""What a planned trial tells: judged by the draw of the plan itself.

Guarantees: a p is the share of all the ways in which the plan could have shared out the jars of an
evening that put as much of the failing on a suspect as was seen, or more; nothing is assumed of how
results vary. When nothing is a cause something is shown in no more than the level's share of
trials, however many suspects were tried: the strongest is held to the level divided by their
number (Holm), and the next is looked at only among jars that agree in it, so that what a shown
cause did is laid on nobody else. A jar that was lost or changed counts against every accusation.
Refuses: to show one of two that stand out alike.

References:
    Fisher, The Design of Experiments, 1935, chapter II; Ernst, Permutation methods: a basis for
    exact inference, Statist. Sci. 19 (2004) 676; Holm, Scand. J. Statist. 6 (1979) 65; all from
    memory.
"""

from collections.abc import Hashable, Iterable, Mapping, Sequence
from enum import StrEnum
from fractions import Fraction
from math import comb, prod
from typing import TypeVar

from msgspec import Struct

from ledger.science.statistics.designs import Row

NumberT = TypeVar("NumberT", int, float)
Stratum = Sequence[tuple[bool, Fraction]]
"""Jars that were shared out together: whether at the suspected level, and how bad each was."""


class Shown(StrEnum):
    """What a trial says of one suspect."""

    CAUSE = "cause"
    LEAD = "lead"
    INSEPARABLE = "inseparable"
    NONE = "none"
    TOO_FEW = "too few"


class TriedJar(Struct, frozen=True):
    """One jar of a planned trial, as it turned out."""

    evening: int
    """On which evening it was made; jars are shared out within one."""
    row: Row
    """For each factor whether it is at the suspected level."""
    score: Fraction | None
    """How bad it was, more is worse: 0 or 1, a grade's rank, NTU. None: lost or changed."""


class Tried(Struct, frozen=True):
    """What a trial says of one factor."""

    shown: Shown
    """In a word."""
    p: Fraction
    """How often the draw alone would have put so much on it, or more."""
    p_adjusted: Fraction
    """The same, allowing for all that were tried."""
    least_p: Fraction
    """The smallest p that these jars could have come to."""


def tried(jars: Sequence[TriedJar], factors: int, level: Fraction) -> tuple[Tried, ...]:
    """Return what a trial says of each factor, in their order."""
    least = [least_p(_strata(jars, factor, ())) for factor in range(factors)]
    shown: list[int] = []
    told: dict[int, Tried] = {}
    floor = Fraction(0)
    while len(shown) < factors:
        left = [factor for factor in range(factors) if factor not in shown]
        found = {factor: p_of_draw(_strata(jars, factor, shown)) for factor in left}
        p = min(found.values())
        floor = max(floor, p * len(left))
        alike = [factor for factor in left if found[factor] == p]
        if floor > level or len(alike) > 1:
            told |= _not_shown(found, least, level, is_first=not shown, is_reached=floor <= level)
            break
        told[alike[0]] = Tried(Shown.CAUSE, p, floor, least[alike[0]])
        shown += alike
    return tuple(told[factor] for factor in range(factors))


def _not_shown(
    found: Mapping[int, Fraction],
    least: Sequence[Fraction],
    level: Fraction,
    *,
    is_first: bool,
    is_reached: bool,
) -> dict[int, Tried]:
    told, running, best = {}, Fraction(0), min(found.values())
    for rank, factor in enumerate(sorted(found, key=lambda each: found[each])):
        p = found[factor]
        running = max(running, min(Fraction(1), p * (len(found) - rank)))
        if is_reached and p == best:
            shown = Shown.INSEPARABLE
        elif p <= level:
            shown = Shown.LEAD
        elif is_first and least[factor] * len(found) > level:
            shown = Shown.TOO_FEW
        else:
            shown = Shown.NONE
        told[factor] = Tried(shown, p, running, least[factor])
    return told


def _strata(jars: Sequence[TriedJar], factor: int, shown: Sequence[int]) -> list[Stratum]:
    known = [jar.score for jar in jars if jar.score is not None]
    low, high = min(known, default=Fraction(0)), max(known, default=Fraction(0))
    strata: dict[Hashable, list[tuple[bool, Fraction]]] = {}
    for jar in jars:
        has = jar.row[factor]
        # A jar that was lost is taken for what clears the suspect: clear with it, failed without.
        score = jar.score if jar.score is not None else (low if has else high)
        key = (jar.evening, *(jar.row[other] for other in shown))
        strata.setdefault(key, []).append((has, score))
    return list(strata.values())


def least_p(strata: Iterable[Stratum]) -> Fraction:
    """Return the smallest p to which jars could come, however they turned out.

    >>> least_p([[(True, Fraction(1)), (False, Fraction(0))] * 2] * 2)
    Fraction(1, 36)
    """
    return Fraction(1, prod(comb(len(part), sum(has for has, _ in part)) for part in strata))


def p_of_draw(strata: Iterable[Stratum]) -> Fraction:
    """Return how often jars shared out at random within strata come to as much, or more.

    The scores of a stratum are turned into ranks, ties into their mean, and the ranks of the jars
    at the suspected level are summed. Of two scores only, it is Fisher's exact test, one-sided.

    Args:
        strata: For each stratum its jars: whether at the suspected level, and how bad it was.

    >>> cups = [(True, Fraction(bad)) for bad in (1, 1, 1, 0)]
    >>> cups += [(False, Fraction(bad)) for bad in (0, 0, 0, 1)]
    >>> p_of_draw([cups])
    Fraction(17, 70)
    """
    ways: dict[int, int] = {0: 1}
    seen = 0
    for stratum in strata:
        ranks = doubled_ranks([score for _, score in stratum])
        with_it = sum(has for has, _ in stratum)
        ways = folded(ways, sums_of(ranks, with_it))
        seen += sum(rank for rank, (has, _) in zip(ranks, stratum, strict=True) if has)
    every = sum(ways.values())
    reached = sum(count for total, count in ways.items() if total >= seen)
    return Fraction(reached, every)


def doubled_ranks(scores: Sequence[Fraction]) -> list[int]:
    """Return twice the rank of each score, the least first; equal ones share their mean.

    >>> doubled_ranks([Fraction(3), Fraction(1), Fraction(3), Fraction(9)])
    [5, 2, 5, 8]
    """
    return [1 + sum(2 * (other < score) + (other == score) for other in scores) for score in scores]


def sums_of(ranks: Sequence[int], taken: int) -> dict[int, int]:
    """Return for each sum in how many ways so many of the ranks come to it.

    >>> sums_of([1, 2, 3, 4], 2)
    {3: 1, 4: 1, 5: 2, 6: 1, 7: 1}
    """
    ways: list[dict[int, int]] = [{0: 1}, *({} for _ in range(taken))]
    for rank in ranks:
        for count in range(taken, 0, -1):
            for total, number in ways[count - 1].items():
                ways[count][total + rank] = ways[count].get(total + rank, 0) + number
    return dict(sorted(ways[taken].items()))


def folded(one: Mapping[int, NumberT], other: Mapping[int, NumberT]) -> dict[int, NumberT]:
    """Return the ways, or shares, in which two totals come to each sum.

    >>> folded({0: 1, 1: 2}, {0: 1, 1: 1})
    {0: 1, 1: 3, 2: 2}
    """
    out: dict[int, NumberT] = {}
    for total, number in one.items():
        for more, times in other.items():
            out[total + more] = out.get(total + more, 0) + number * times
    return out
