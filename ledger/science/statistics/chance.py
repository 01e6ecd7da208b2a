"""How often chance alone would make any suspect stand out as much, at every level.

Guarantees: all suspects of a level are dealt the same chance outcomes, so that what goes together
counts once; what the levels take adds up to the whole; what follows from drift is not taken for a
cause. Refuses: to allow for what could never have stood out; it weighs on nobody (Tarone).
"""

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from fractions import Fraction

from ledger.science.statistics.adjustment import holm
from ledger.science.statistics.columns import Group
from ledger.science.statistics.drift import odds_in_time
from ledger.science.statistics.exact import least_one_sided, one_sided
from ledger.science.statistics.looks import share_left
from ledger.science.statistics.permutation import outcomes, strata_of, tails
from ledger.science.statistics.suspects import Level

BOUGHT_WEIGHT = 2
"""A delivered lot may take twice the share of the level that a setting or a time may."""
# Who asks wants to know of her suppliers first; the shares are set before any count is seen.
LOWER_SHARE = Fraction(1, 4)
"""What the levels below batches may take of the level, where there are batches."""
# What goes into whole batches reaches many lots, so most of the level is for that.
LEVELS = len(Level)
LEAST_DRAWN = 499
"""At least so many outcomes are drawn where something may stand out."""
FINENESS = 4
"""So many times finer than the level left is what a draw can tell."""
CLOSE = 1 + 1e-9
"""Chances closer than this factor are a tie."""


def weight(group: Group) -> int:
    """Return how large a share of the level a group may take."""
    return BOUGHT_WEIGHT if group.is_bought else 1


def families(groups: Sequence[Group], level: Fraction) -> dict[Level, list[Group]]:
    """Return the groups of each level that could have stood out."""
    found: dict[Level, list[Group]] = {}
    for group in groups:
        if least_one_sided(group.counts) <= level:
            found.setdefault(group.ground.level, []).append(group)
    return found


def adjusted(
    found: Mapping[Level, Sequence[Group]], level: Fraction, top: Level
) -> dict[tuple[Level, int], Fraction]:
    """Return p of every group allowing for all, for drift and for being asked again.

    Args:
        found: The groups of each level that could have stood out.
        level: What stands out is tried against drift too.
        top: The highest level that these lots have.
    """
    out: dict[tuple[Level, int], Fraction] = {}
    for name, groups in found.items():
        times = _times(name, found, top) / share_left(groups[0].ground.failures)
        for group, p in zip(groups, _allowing(groups, times, level), strict=True):
            out[group.ground.level, group.mask] = min(Fraction(1), p)
    return out


def _times(name: Level, found: Mapping[Level, Sequence[Group]], top: Level) -> Fraction:
    if name is not top:
        return 1 / (LOWER_SHARE if len(found) < LEVELS else LOWER_SHARE / 2)
    return 1 / (1 - LOWER_SHARE if len(found) > 1 else Fraction(1))


def _allowing(groups: Sequence[Group], times: Fraction, level: Fraction) -> list[Fraction]:
    alone = [one_sided(group.counts) * times for group in groups]
    # What is not small by itself never is when all are allowed for; a plain bound serves then.
    if min(alone) > level:
        return list(holm(alone))
    ground = groups[0].ground
    drawn = max(LEAST_DRAWN, int(FINENESS * times / level))
    plain = [each * times for each in _smallest(groups, None, drawn)]
    if not ground.is_dated or min(plain) > level:
        return plain
    odds = odds_in_time([unit.is_failed for unit in ground.units])
    drifted = [each * times for each in _smallest(groups, odds, drawn)]
    return [max(pair) for pair in zip(plain, drifted, strict=True)]


def _smallest(groups: Sequence[Group], odds: Sequence[float] | None, drawn: int) -> list[Fraction]:
    """Return how often the smallest weighted p of all groups is as small as that of each."""
    ground = groups[0].ground
    seen = ground.failed & ground.telling
    strata = strata_of(list(ground.strata.values()), seen)
    pairs = [
        (group.mask, [p / weight(group) for p in tails(group.mask, strata, odds)])
        for group in groups
    ]
    least = sorted(
        min([chances[(mask & failed).bit_count()] for mask, chances in pairs])
        for failed in outcomes(strata, seen, odds, drawn)
    )
    return [
        Fraction(bisect_right(least, chances[(mask & seen).bit_count()] * CLOSE), len(least))
        for mask, chances in pairs
    ]
