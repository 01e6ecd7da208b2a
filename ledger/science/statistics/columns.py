"""Which units had what: a column for each thing that lots may have had, at its own level.

Guarantees: things that went together wherever anything can be told are one group; what was not
written down is no suspect. Refuses: to look at which lots failed when it chooses a level.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property

from msgspec import Struct

from ledger.science.statistics.classes import NOT_RECORDED
from ledger.science.statistics.exact import Counts, Table, counts_of
from ledger.science.statistics.levels import Ground, level_of, tables
from ledger.science.statistics.suspects import Cause, Level, Observed, Sort

BEGUN = "begun"
"""Name of the time of making as a suspect."""
QUARTERS = (1, 2, 3)
"""The making is divided in time at each quarter of the units."""


class Group(Struct, frozen=True, dict=True):
    """Things that cannot be told apart by the units of one level."""

    causes: tuple[Cause, ...]
    """What they are."""
    ground: Ground
    """The units of their level."""
    mask: int
    """Bits of the units that had them, where anything can be told."""
    runs: frozenset[int]
    """Places of the lots that had the first of them."""
    is_bought: bool
    """Whether one of them is a lot that was delivered."""

    @cached_property
    def tables(self) -> dict[str, Table]:
        """Counts of the units that tell anything, by stratum."""
        return tables(self.mask, self.ground.failed, self.ground.strata)

    @cached_property
    def counts(self) -> Counts:
        """What the count of failed units with it could be."""
        return counts_of(list(self.tables.values()))

    @property
    def whole(self) -> Table:
        """The counts of all its units that tell anything."""
        rows = list(self.tables.values())
        return Table(
            sum(row.failed_with for row in rows),
            sum(row.failed_without for row in rows),
            sum(row.clear_with for row in rows),
            sum(row.clear_without for row in rows),
        )


class Columns(Struct, frozen=True):
    """All that lots may have had."""

    groups: tuple[Group, ...]
    """What some units had and others had not, where anything can be told."""
    in_all: tuple[Cause, ...]
    """What every lot had."""
    untold: tuple[Cause, ...]
    """What differs nowhere that anything can be told."""


def columns(
    observed: Sequence[Observed], found: Mapping[Level, Ground], made: frozenset[str]
) -> Columns:
    """Return what the lots had.

    Args:
        observed: The lots.
        found: Their units at every level, the highest first.
        made: Codes of lots that were made here; they are where a failure sits, not why.
    """
    in_all, untold = list[Cause](), list[Cause]()
    together: dict[tuple[Level, int], list[tuple[Cause, frozenset[int]]]] = {}
    top = next(iter(found.values()))
    for cause, runs in [*_had(observed, made), *_in_time(top)]:
        level = top.level if cause.sort is Sort.TIME else level_of(runs, observed, found)
        mask = found[level].mask(runs) & found[level].telling
        if len(runs) == len(observed):
            in_all.append(cause)
        elif cause.level == NOT_RECORDED or not _differs(mask, found[level]):
            untold.append(cause)
        else:
            together.setdefault((level, mask), []).append((cause, runs))
    groups = tuple(
        _group(found[level], mask, members) for (level, mask), members in together.items()
    )
    return Columns(groups, tuple(sorted(in_all)), tuple(sorted(untold)))


def _group(
    ground: Ground, mask: int, members: Sequence[tuple[Cause, frozenset[int]]]
) -> Group:  # fmt: skip
    ordered = sorted(members, key=lambda member: (member[0].sort is Sort.TIME, member[0]))
    return Group(
        causes=tuple(cause for cause, _ in ordered),
        ground=ground,
        mask=mask,
        runs=ordered[0][1],
        is_bought=any(cause.sort is Sort.LOT for cause, _ in members),
    )


def _differs(mask: int, ground: Ground) -> bool:
    return any(0 < mask & all_of < all_of for all_of in ground.strata.values())


def _had(
    observed: Sequence[Observed], made: frozenset[str]
) -> Iterator[tuple[Cause, frozenset[int]]]:
    places: dict[Cause, set[int]] = {}
    for place, run in enumerate(observed):
        for cause in _causes_in(run):
            places.setdefault(cause, set()).add(place)
    for cause, had in places.items():
        if cause.sort is not Sort.LOT or cause.name not in made:
            yield cause, frozenset(had)


def _causes_in(run: Observed) -> Iterable[Cause]:
    yield from (Cause(Sort.LOT, code) for code in sorted(run.inputs))
    yield from (Cause(Sort.SETTING, name, level) for name, level in run.settings.items())


def _in_time(ground: Ground) -> Iterator[tuple[Cause, frozenset[int]]]:
    if not ground.is_dated:
        return
    units = ground.units
    for place in dict.fromkeys(len(units) * quarter // 4 for quarter in QUARTERS):
        if not place:
            continue
        for word, part in (("before", units[:place]), ("from", units[place:])):
            level = f"{word} {units[place].begun_on}"
            yield Cause(Sort.TIME, BEGUN, level), frozenset(n for unit in part for n in unit.runs)
