"""A trial compared, for machines: figures as decimals in text.

Refuses: floats, and levels of a factor that moved together with something.
"""

from collections.abc import Sequence

from ledger.domain.entries.choices import Grade
from ledger.science.statistics.trials import Factor, Jar, Spread, mean
from ledger.service.causes.compare import GRADES, Comparison
from reports.json.causes.trial import PlanTold, plan_told
from reports.json.kit.answer import Answer, Code, Figure
from reports.views.causes import ComparisonView
from reports.words.causes.odds import decimal


class SetTold(Answer, frozen=True):
    """A factor at its level."""

    factor: str
    """Its name."""
    level: str
    """Its level."""


class LookTold(Answer, frozen=True):
    """How clear a batch was at an age."""

    age: str
    """The age."""
    grade: Grade
    """How clear it was."""


class BatchTold(Answer, frozen=True):
    """One batch of the trial."""

    code: Code
    """Its code."""
    settings: tuple[SetTold, ...]
    """Its factors, each at its level; empty for the control."""
    is_control: bool
    """Whether it is made the house's way, to compare with."""
    looks: tuple[LookTold, ...]
    """How clear it was, youngest first."""
    ntu: Figure | None
    """Last turbidity, NTU."""
    yield_percent: Figure | None
    """What came out of the liquids put in."""
    is_front: bool
    """Whether no other batch beats it on clarity and loss together."""


class LevelTold(Answer, frozen=True):
    """The batches at one level of a factor."""

    level: str
    """The level."""
    n: int
    """How many batches."""
    codes: tuple[Code, ...]
    """Which."""
    ntu: Figure | None
    """Their mean turbidity, NTU."""
    yield_percent: Figure | None
    """Their mean yield."""


class FactorTold(Answer, frozen=True):
    """A factor with the batches at each of its levels."""

    factor: str
    """Its name."""
    confounded_with: tuple[str, ...]
    """What always moved together with it."""
    levels: tuple[LevelTold, ...]
    """Its levels; empty when it is confounded."""


class RepeatsTold(Answer, frozen=True):
    """How far batches made alike lay apart at most: what chance alone does."""

    n: int
    """How many batches have a repeat."""
    grades: int | None
    """In grades."""
    ntu: Figure | None
    """In NTU."""
    yield_points: Figure | None
    """In points of yield."""


class CompareAnswer(Answer, frozen=True):
    """A trial, compared."""

    group: str
    """Its name."""
    batches: tuple[BatchTold, ...]
    """Its batches, in the order they were begun."""
    control_codes: tuple[Code, ...]
    """Which of them are the control."""
    factors: tuple[FactorTold, ...]
    """Its factors."""
    front_codes: tuple[Code, ...]
    """Batches that no other beats on clarity and loss together."""
    repeats: RepeatsTold
    """How far batches made alike lay apart."""
    held_constant_codes: tuple[Code, ...]
    """Lots that went into every batch."""
    plan: PlanTold | None
    """What its plan comes to; null where none was made."""
    sentences: tuple[str, ...]
    """What it comes to, a line each."""
    path: str | None
    """Where its paper is; null when none was written."""


def compare_answer(found: Comparison, view: ComparisonView, path: str | None) -> CompareAnswer:
    """Return a trial; a factor that moved with another has no levels."""
    return CompareAnswer(
        group=found.group,
        batches=tuple(_batch(jar, found) for jar in found.jars),
        control_codes=_codes([jar for jar in found.jars if jar.is_control]),
        factors=tuple(map(_factor, found.factors)),
        front_codes=_codes(found.front),
        repeats=_repeats(found.spread),
        held_constant_codes=tuple(lot.code for lot in found.held),
        plan=plan_told(found.outcome) if found.outcome else None,
        sentences=(*view.lines, *view.outcome, *(item.words for item in view.factors), view.front),
        path=path,
    )


def _codes(jars: Sequence[Jar]) -> tuple[Code, ...]:
    return tuple(jar.lot for jar in jars)


def _factor(factor: Factor) -> FactorTold:
    levels = () if factor.moved_with else factor.levels
    return FactorTold(
        factor.name, factor.moved_with, tuple(_level(level, jars) for level, jars in levels)
    )


def _level(level: str, jars: Sequence[Jar]) -> LevelTold:
    return LevelTold(
        level=level,
        n=len(jars),
        codes=_codes(jars),
        ntu=decimal(mean([jar.ntu for jar in jars])),
        yield_percent=decimal(mean([jar.yield_pct for jar in jars])),
    )


def _batch(jar: Jar, found: Comparison) -> BatchTold:
    return BatchTold(
        code=jar.lot,
        settings=tuple(SetTold(name, level) for name, level in jar.factors.items()),
        is_control=jar.is_control,
        looks=tuple(LookTold(age, GRADES[rank]) for age, rank in jar.grades),
        ntu=decimal(jar.ntu),
        yield_percent=decimal(jar.yield_pct),
        is_front=jar in found.front,
    )


def _repeats(spread: Spread) -> RepeatsTold:
    return RepeatsTold(spread.batches, spread.grade, decimal(spread.ntu), decimal(spread.yield_pct))
