"""A planned trial, for machines: what was drawn, and what came of it."""

from collections.abc import Sequence

from msgspec.structs import asdict

from ledger.domain.entries import Plan
from ledger.domain.entries.choices import Grade
from ledger.domain.entries.trials import Decides, TrialAge
from ledger.domain.evidence.draws import mark
from ledger.science.statistics.randomisation import Shown
from ledger.service.causes.layout import Planned
from ledger.service.causes.outcome import JarState, Outcome
from ledger.service.desk.book import Recorded
from reports.json.desk.recorded import RecordedAnswer, recorded_answer
from reports.json.kit.answer import Answer, Code, Figure
from reports.words.causes.odds import decimal


class FactorTried(Answer, frozen=True):
    """Something that a trial tries."""

    factor: str
    """Its name."""
    usual: str
    """The level taken for harmless."""
    suspected: str
    """The level that may be the cause."""


class JarPlanned(Answer, frozen=True):
    """One jar of a plan."""

    jar: int
    """Its place in the order in which jars are made, from 1."""
    evening: int
    """The evening on which it is made."""
    code: Code
    """Code of its lot."""
    mark: str
    """What is written on it."""
    levels: tuple[str, ...]
    """Its level of each factor, in their order."""


class TrialAnswer(Answer, frozen=True):
    """A planned trial."""

    name: str
    """Its name."""
    entry: int
    """Number of the entry of the plan."""
    is_struck: bool
    """Whether that was struck."""
    earlier_entries: tuple[int, ...]
    """Plans of the same question before it."""
    tries: tuple[FactorTried, ...]
    """What it tries."""
    judged_by: Decides
    """What it is judged by."""
    age: TrialAge
    """The age of the look that decides."""
    worst: Grade
    """The worst grade that counts as clear."""
    level_percent: Figure
    """How often at most it names an innocent."""
    chance_percent: Figure
    """How often it names the cause."""
    fails_percent: Figure
    """How many jars are taken to fail with the cause."""
    otherwise_percent: Figure
    """How many without."""
    root: str
    """The root of the book before it, from which the jars are drawn."""
    root_entries: int
    """How many entries the book then had."""
    jars: tuple[JarPlanned, ...]
    """Its jars in the order in which they are made."""
    path: str | None
    """Where its sheet is; null when none was written."""


class PlanAnswer(RecordedAnswer, frozen=True):
    """A trial that was planned."""

    trial: TrialAnswer
    """The trial."""


class JarsAnswer(Answer, frozen=True):
    """The jars of an evening that were begun."""

    seqs: tuple[int, ...]
    """Numbers of the entries."""
    jars: tuple[JarPlanned, ...]
    """The jars."""
    next: str
    """The command that comes next."""


class TriedTold(Answer, frozen=True):
    """What a trial says of one thing that it tried."""

    factor: str
    """Its name."""
    suspected: str
    """The level that was suspected."""
    verdict: Shown
    """What is said: cause, lead, inseparable, none or too few."""
    p: Figure
    """How often the draw alone puts so much on it."""
    p_adjusted: Figure
    """The same, allowing for all that were tried."""


class JarTold(Answer, frozen=True):
    """What became of one jar of a plan."""

    jar: int
    """Its place in the order."""
    code: Code
    """Code of its lot."""
    state: JarState
    """What became of it."""
    why: str
    """What was changed; empty when nothing was."""
    score: Figure | None
    """NTU, or 1 for a jar that failed and 0 for a clear one; null when it does not count."""


class PlanTold(Answer, frozen=True):
    """What a planned trial came to."""

    entry: int
    """Number of the entry of the plan."""
    earlier_entries: tuple[int, ...]
    """Plans of the same question before it."""
    cause_levels: tuple[str, ...]
    """The suspected levels that are shown to be causes."""
    tried: tuple[TriedTold, ...]
    """What is said of each thing it tried."""
    jars: tuple[JarTold, ...]
    """Its jars."""


def trial_answer(found: Planned, path: str | None) -> TrialAnswer:
    """Return a planned trial."""
    plan = found.plan
    return TrialAnswer(
        name=plan.name,
        entry=found.entry.seq,
        is_struck=found.is_struck,
        earlier_entries=tuple(entry.seq for entry in found.earlier),
        tries=tuple(FactorTried(item.name, item.usual, item.suspected) for item in plan.factors),
        judged_by=plan.decides,
        age=plan.age,
        worst=plan.worst,
        level_percent=_percent(plan.level_mpct),
        chance_percent=_percent(plan.chance_mpct),
        fails_percent=_percent(plan.fails_mpct),
        otherwise_percent=_percent(plan.else_mpct),
        root=plan.root,
        root_entries=plan.entries,
        jars=_jars(found),
        path=path,
    )


def _percent(mpct: int) -> str:
    return f"{mpct / 1000:g}"


def _jars(found: Planned) -> tuple[JarPlanned, ...]:
    return tuple(
        JarPlanned(
            jar.number,
            jar.evening,
            jar.code,
            mark(jar.code),
            tuple(level for _, level in jar.levels),
        )
        for jar in found.jars
    )


def plan_answer(done: Recorded[Plan], found: Planned, step: str, path: str | None) -> PlanAnswer:
    """Return the answer to a plan."""
    plain = asdict(recorded_answer(done, None, step))
    return PlanAnswer(**plain, trial=trial_answer(found, path))


def jars_answer(opened: Sequence[Recorded], found: Planned, step: str) -> JarsAnswer:
    """Return the answer to jars begun."""
    codes = {each.code for each in opened}
    return JarsAnswer(
        seqs=tuple(each.seq for each in opened),
        jars=tuple(jar for jar in _jars(found) if jar.code in codes),
        next=step,
    )


def plan_told(found: Outcome) -> PlanTold:
    """Return what a planned trial came to."""
    return PlanTold(
        entry=found.planned.entry.seq,
        earlier_entries=tuple(entry.seq for entry in found.planned.earlier),
        cause_levels=found.shown,
        tried=tuple(
            TriedTold(
                item.name,
                item.suspected,
                told.shown,
                decimal(told.p) or "0",
                decimal(told.p_adjusted) or "0",
            )
            for item, told in zip(found.planned.plan.factors, found.tried, strict=True)
        ),
        jars=tuple(
            JarTold(jar.planned.number, jar.planned.code, jar.state, jar.why, decimal(jar.score))
            for jar in found.jars
        ),
    )
