"""What a planned trial came to: its jars unblinded, and judged by the draw of its plan.

Guarantees: every jar of the plan is accounted for; one that was lost, struck, not looked at in time
or made in another way than planned counts against every accusation, so that whoever looks early,
or loses a jar, never makes one easier. Refuses: to judge by anything but what the plan says.
"""

from collections.abc import Collection, Mapping, Sequence
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from ledger.domain.entries import Entry, Look, Start, entries_of
from ledger.domain.entries.choices import Grade
from ledger.domain.entries.trials import Decides
from ledger.domain.lots.lot import Lot
from ledger.science.statistics.randomisation import Shown, Tried, TriedJar, tried
from ledger.service.causes.ages import aged_looks
from ledger.service.causes.layout import Planned, PlannedJar
from ledger.store.read.runs import Run

GRADES = tuple(Grade)
"""Grades, best first."""


class JarState(StrEnum):
    """What became of a jar of a plan."""

    KEPT = "as planned"
    NOT_BEGUN = "not begun"
    NOT_SEEN = "not looked at"
    CHANGED = "changed"


class TriedOne(Struct, frozen=True):
    """One jar of a plan, unblinded."""

    planned: PlannedJar
    """What was planned."""
    state: JarState
    """What became of it."""
    why: str
    """What was changed, in words; empty when nothing was."""
    score: Fraction | None
    """NTU, or 1 for one that failed and 0 for a clear one; None when it does not count."""


class Outcome(Struct, frozen=True):
    """What a planned trial came to."""

    planned: Planned
    """The plan."""
    jars: tuple[TriedOne, ...]
    """Its jars in the order of the plan."""
    tried: tuple[Tried, ...]
    """What is said of each factor, in the order of the plan."""

    @property
    def shown(self) -> tuple[str, ...]:
        """The suspected levels that are shown to be causes."""
        levels = (item.suspected for item in self.planned.plan.factors)
        pairs = zip(levels, self.tried, strict=True)
        return tuple(level for level, item in pairs if item.shown is Shown.CAUSE)


def outcome(
    found: Planned,
    made: Sequence[Run],
    said: Mapping[int, Sequence[Entry]],
    inputs: Mapping[str, Mapping[str, Lot]],
    lots: Collection[str],
) -> Outcome:
    """Return what a planned trial came to.

    Args:
        found: Its plan.
        made: The runs of the trial.
        said: What was entered of each, by the number of its lot.
        inputs: The lots that went into each at any depth, by its code.
        lots: Which levels of the plan are codes of lots.
    """
    by_jar: dict[int, tuple[Sequence[Entry], Collection[str]]] = {}
    for run in made:
        entries = said.get(run.lot, ())
        for start in entries_of(entries, Start):
            if start.facts.planned_by == found.entry.seq and start.facts.jar:
                by_jar[start.facts.jar] = entries, inputs.get(run.code, {}).keys()
    jars = tuple(_jar(found, jar, by_jar.get(jar.number), lots) for jar in found.jars)
    judged = [TriedJar(one.planned.evening, one.planned.row, one.score) for one in jars]
    return Outcome(found, jars, tried(judged, len(found.plan.factors), found.level))


def _jar(
    found: Planned,
    jar: PlannedJar,
    kept: tuple[Sequence[Entry], Collection[str]] | None,
    lots: Collection[str],
) -> TriedOne:
    if kept is None:
        return TriedOne(jar, JarState.NOT_BEGUN, "", None)
    score = _score(found, kept[0])
    if score is None:
        return TriedOne(jar, JarState.NOT_SEEN, "", None)
    if why := _changed(found, jar, *kept, lots):
        return TriedOne(jar, JarState.CHANGED, why, None)
    return TriedOne(jar, JarState.KEPT, "", score)


def _score(found: Planned, said: Sequence[Entry]) -> Fraction | None:
    plan = found.plan
    looks: list[Look] = [look for age, look in aged_looks(said) if age == plan.age]
    if plan.decides is Decides.NTU:
        read = [look.ntu_milli for look in looks if look.ntu_milli is not None]
        return Fraction(max(read), 1000) if read else None
    worst = max((GRADES.index(look.grade) for look in looks), default=None)
    return None if worst is None else Fraction(worst > GRADES.index(plan.worst))


def _changed(
    found: Planned,
    jar: PlannedJar,
    said: Sequence[Entry],
    inputs: Collection[str],
    lots: Collection[str],
) -> str:
    """Return in what a jar departs from its plan; empty when in nothing."""
    starts = entries_of(said, Start)
    set_to = {item.name: item.planned for start in starts for item in start.facts.factors}
    told = []
    for item, (name, level) in zip(found.plan.factors, jar.levels, strict=True):
        other = item.suspected if level == item.usual else item.usual
        if set_to.get(name) != level:
            told.append(f"{name} was set to {set_to.get(name, 'nothing')}, not {level}")
        if level in lots and level not in inputs:
            told.append(f"{level} is not in it")
        if other in inputs:
            told.append(f"{other} is in it")
    return ", ".join(told)
