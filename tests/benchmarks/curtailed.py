"""A judge that stops to draw as soon as nothing of a level can be named any more.

Guarantees: all that the whole judge names is named, seldom a little more, so whoever is told a name
asks the whole judge; p means nothing here. For the benchmark alone, which asks books of hundreds of
syrups after each failure.
"""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from fractions import Fraction
from unittest.mock import patch

from ledger.science.statistics import chance, judge, permutation
from ledger.science.statistics.columns import Group
from ledger.science.statistics.drift import odds_in_time

_WHOLE = chance._allowing


@contextmanager
def curtailed() -> Iterator[None]:
    """Judge so within it; where failures sit is left out, for it names nothing."""
    with (
        patch.object(chance, "_allowing", _allowing),
        patch.object(judge, "_sites", lambda *_: []),
    ):
        yield


def _allowing(groups: Sequence[Group], times: Fraction, level: Fraction) -> list[Fraction]:
    if not _may_be_shown(groups, times, level):
        return [Fraction(1)] * len(groups)
    ground = groups[0].ground
    drift = [odds_in_time([unit.is_failed for unit in ground.units])] if ground.is_dated else []
    # Drift explains more than luck alone, so it is the sooner to say that nothing stands out.
    if any(_is_hopeless(groups, odds, times, level) for odds in (*drift, None)):
        return [Fraction(1)] * len(groups)
    return _WHOLE(groups, times, level)


def _may_be_shown(groups: Sequence[Group], times: Fraction, level: Fraction) -> bool:
    """Return whether any of them is small by itself and told apart from all others and from time.

    What is named is the strongest of all, or stands beside it.
    """
    judged = [judge._Judged(group, judge._suspect([], group, None)) for group in groups]
    return any(
        judge._is_shown(judge._told(item, judged, [], level))
        for item in judged
        if item.suspect.p * times <= level
    )


def _is_hopeless(
    groups: Sequence[Group], odds: Sequence[float] | None, times: Fraction, level: Fraction
) -> bool:
    """Return whether chance alone makes any of them stand out as much, too often."""
    ground = groups[0].ground
    seen = ground.failed & ground.telling
    strata = permutation.strata_of(list(ground.strata.values()), seen)
    drawn = max(chance.LEAST_DRAWN, int(chance.FINENESS * times / level))
    reached = _reached(groups, seen, strata, odds)
    allowed = level / times * max(drawn + 1, permutation.MOST_LISTED)
    met = 0
    for failed in permutation.outcomes(strata, seen, odds, drawn):
        met += any((mask & failed).bit_count() >= count for mask, count in reached)
        if met > allowed:
            return True
    return False


def _reached(
    groups: Sequence[Group],
    seen: int,
    strata: Sequence[permutation.Stratum],
    odds: Sequence[float] | None,
) -> list[tuple[int, int]]:
    """Return for each group how many must fail with it to stand out as the best one does."""
    pairs = [
        (
            group.mask,
            [p / chance.weight(group) for p in permutation.tails(group.mask, strata, odds)],
        )
        for group in groups
    ]
    best = min(chances[(mask & seen).bit_count()] for mask, chances in pairs) * chance.CLOSE
    return [
        (mask, sum(p > best for p in chances)) for mask, chances in pairs if chances[-1] <= best
    ]
