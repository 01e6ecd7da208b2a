"""Where failures sit: a batch made here whose lots failed more than others.

Guarantees: a batch is where a failure sits, never why; lots are compared within products, allowing
for all batches that could have stood out. Refuses: to name a batch as a cause: what went into it
and how it was made cannot be told apart by one batch.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from ledger.science.statistics.adjustment import holm, worth_testing
from ledger.science.statistics.columns import Group
from ledger.science.statistics.exact import least_one_sided, one_sided
from ledger.science.statistics.levels import Ground, Unit
from ledger.science.statistics.suspects import Cause, Level, Observed, Sort


def sites(observed: Sequence[Observed], made: frozenset[str]) -> list[Group]:
    """Return the batches that went into some of the lots and not into others."""
    units = tuple(
        Unit((place,), run.product, run.is_failed, run.begun[:10])
        for place, run in enumerate(observed)
    )
    ground = Ground(Level.RUN, units, is_dated=False)
    groups = []
    for code in sorted(made):
        runs = frozenset(place for place, run in enumerate(observed) if code in run.inputs)
        mask = ground.mask(runs) & ground.telling
        if any(0 < mask & all_of < all_of for all_of in ground.strata.values()):
            groups.append(Group((Cause(Sort.LOT, code),), ground, mask, runs, is_bought=False))
    return groups


def adjusted_sites(groups: Sequence[Group], level: Fraction) -> Mapping[int, Fraction]:
    """Return p of each batch that could stand out, allowing for all of them, by its place."""
    able = worth_testing([least_one_sided(group.counts) for group in groups], level)
    return dict(zip(able, holm([one_sided(groups[n].counts) for n in able]), strict=True))
