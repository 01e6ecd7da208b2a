"""Where things were dealt out: the batches, base syrups and runs that are counted once each.

Guarantees: what is the same in all lots of a batch is counted by batches, and batches that hang
together by rework are one; what differs within a batch is compared within it. Refuses: to count
lots that share the luck of one batch as evidence each.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from functools import cached_property

from msgspec import Struct

from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Level, Observed


class Unit(Struct, frozen=True):
    """What counts once."""

    runs: tuple[int, ...]
    """Places of its lots among those observed."""
    stratum: str
    """Units are compared within it."""
    is_failed: bool
    """Whether any lot of it failed."""
    begun_on: str
    """The day on which its first lot was begun; empty where it is not known."""


class Ground(Struct, frozen=True, dict=True):
    """All units of one level, by when they were begun."""

    level: Level
    """Which level."""
    units: tuple[Unit, ...]
    """Its units."""
    is_dated: bool
    """Whether it is known of all when they were begun."""

    @cached_property
    def failed(self) -> int:
        """Bits of the units that failed."""
        return sum(1 << place for place, unit in enumerate(self.units) if unit.is_failed)

    @property
    def failures(self) -> int:
        """How many units failed."""
        return self.failed.bit_count()

    @cached_property
    def strata(self) -> dict[str, int]:
        """The bits of the units of each stratum in which some failed and some did not."""
        bits: dict[str, int] = {}
        for place, unit in enumerate(self.units):
            bits[unit.stratum] = bits.get(unit.stratum, 0) | 1 << place
        failed = self.failed
        return {name: mask for name, mask in bits.items() if 0 < (mask & failed) < mask}

    @cached_property
    def telling(self) -> int:
        """The bits of all units that are in such a stratum."""
        return sum(self.strata.values())

    @cached_property
    def _unit_of(self) -> dict[int, int]:
        return {run: place for place, unit in enumerate(self.units) for run in unit.runs}

    def mask(self, runs: Iterable[int]) -> int:
        """Return the bits of the units of which any lot is among some."""
        bits = 0
        for run in runs:
            bits |= 1 << self._unit_of[run]
        return bits


def tables(mask: int, failed: int, strata: Mapping[str, int]) -> dict[str, Table]:
    """Return the counts of units with and without something, a table a stratum.

    >>> tables(0b0011, 0b0001, {"": 0b1111})
    {'': Table(failed_with=1, failed_without=0, clear_with=1, clear_without=2)}
    """
    return {
        name: Table(
            (mask & failed & all_of).bit_count(),
            (~mask & failed & all_of).bit_count(),
            (mask & ~failed & all_of).bit_count(),
            (~mask & ~failed & all_of).bit_count(),
        )
        for name, all_of in strata.items()
    }


def grounds(observed: Sequence[Observed]) -> dict[Level, Ground]:
    """Return the units of every level that these lots have, the highest first."""
    found = dict[Level, Ground]()
    if any(run.batch for run in observed):
        batches = _joined([run.batch or f"= {run.lot}" for run in observed])
        found[Level.BATCH] = _ground(Level.BATCH, observed, batches)
    if observed and all(run.bases for run in observed):
        found[Level.BASE] = _ground(Level.BASE, observed, _joined([run.bases for run in observed]))
    # Runs are compared within one batch and one base: there nothing differs but the runs.
    within = [f"{run.batch} {run.bases}".strip() for run in observed]
    found[Level.RUN] = _ground(Level.RUN, observed, [run.lot for run in observed], within)
    return found


def level_of(
    runs: frozenset[int], observed: Sequence[Observed], found: Mapping[Level, Ground]
) -> Level:
    """Return the highest level at which something is the same in all lots of a unit.

    Args:
        runs: Places of the lots that had it.
        observed: All lots.
        found: The levels that there are.
    """
    if Level.BATCH in found and _is_constant(runs, [run.batch or run.lot for run in observed]):
        return Level.BATCH
    if Level.BASE in found and _is_constant(runs, [run.bases for run in observed]):
        return Level.BASE
    return Level.RUN


def _is_constant(runs: frozenset[int], keys: Sequence[str]) -> bool:
    had: dict[str, bool] = {}
    return all(had.setdefault(key, place in runs) == (place in runs)
               for place, key in enumerate(keys))  # fmt: skip


def _joined(keys: Sequence[str]) -> list[str]:
    """Return one key for all lots that share a batch, be it through rework."""
    # Batches linked by rework share luck; treated apart, one stroke of it would count twice.
    leader: dict[str, str] = {}

    def lead(code: str) -> str:
        while leader.setdefault(code, code) != code:
            code = leader[code]
        return code

    for key in keys:
        first, *others = [key] if key.startswith("= ") else key.split()
        for other in others:
            leader[lead(other)] = lead(first)
    return [lead(key if key.startswith("= ") else key.split()[0]) for key in keys]


def _ground(
    level: Level, observed: Sequence[Observed], keys: Sequence[str], within: Sequence[str] = ()
) -> Ground:
    members: dict[str, list[int]] = {}
    for place, key in enumerate(keys):
        members.setdefault(key, []).append(place)
    is_dated = all(run.begun for run in observed)
    rank = {n: place for place, n in enumerate(_in_time(observed))} if is_dated else {}
    units = [
        Unit(
            tuple(places),
            _stratum([observed[n] for n in places], within[places[0]] if within else ""),
            any(observed[n].is_failed for n in places),
            min(observed[n].begun for n in places)[:10],
        )
        for places in members.values()
    ]
    if is_dated:
        units.sort(key=lambda unit: Fraction(sum(rank[n] for n in unit.runs), len(unit.runs)))
    return Ground(level, tuple(units), is_dated)


def _in_time(observed: Sequence[Observed]) -> list[int]:
    return sorted(range(len(observed)), key=lambda n: (observed[n].begun, n))


def _stratum(runs: Sequence[Observed], within: str) -> str:
    products = " and ".join(sorted({run.product for run in runs}))
    return f"{products}, {within}" if within else products
