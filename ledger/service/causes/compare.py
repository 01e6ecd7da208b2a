"""Compare: what the batches of a trial tell.

Guarantees: one consistent view of the book; only what is in force. Refuses: a trial that is not in
the book, with the trials that are, and a trial of one batch.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from msgspec import Struct

from ledger.domain.entries import Entry, Look, Start
from ledger.domain.entries.choices import Grade
from ledger.domain.entries.house import House
from ledger.domain.lots.lot import Lot
from ledger.domain.masters.gaps import PACKING
from ledger.errors import RefusedError
from ledger.science.statistics.trials import Factor, Jar, Spread, factors_of, front, spread
from ledger.service.account.lots import lots_by_number
from ledger.service.account.shares import lots_behind
from ledger.service.causes.ages import AGES, aged_looks
from ledger.service.causes.figures import yield_of
from ledger.service.causes.layout import Planned, with_name
from ledger.service.causes.outcome import Outcome, outcome
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import Seal, seal_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.planned import plans
from ledger.store.read.reach import entries_of_lots
from ledger.store.read.runs import Run, runs

GRADES = tuple(Grade)
"""Grades, best first."""
CONTROL = "control"
"""A factor of this name marks the control."""
KINDS = ("start", "add", "makeup", "rest", "filter", "decant", "finish", "look")
"""Kinds of entry that a comparison reads."""


class Uneven(Struct, frozen=True):
    """A material of which the batches of a trial had different lots."""

    name: str
    """Its name."""
    lots: tuple[tuple[str, int], ...]
    """Each lot with the number of batches that had it."""


class Comparison(Struct, frozen=True):
    """A trial, compared."""

    group: str
    """Its name."""
    house: House | None
    """The house."""
    jars: tuple[Jar, ...]
    """Its batches, in the order they were begun."""
    factors: tuple[Factor, ...]
    """Its factors."""
    ages: tuple[str, ...]
    """Ages at which batches were looked at, youngest first."""
    front: tuple[Jar, ...]
    """Batches that no other beats on clarity and loss together."""
    spread: Spread
    """How far batches made alike lay apart."""
    held: tuple[Lot, ...]
    """Lots that went into every batch."""
    lots: tuple[Lot, ...]
    """Lots that went into any of them."""
    uneven: tuple[Uneven, ...]
    """Materials of which the batches had different lots, though no factor says so."""
    outcome: Outcome | None
    """What the plan of the trial comes to; None where none was made."""
    seal: Seal
    """The seal of the book as it was read."""


def compare(book: Book, group: str) -> Comparison:
    """Compare the batches of a trial.

    Raises:
        RefusedError: There is no such trial, or it has one batch.
    """
    with book.reading() as connection:
        every = runs(connection)
        named = _group(connection, every, group)
        made = [run for run in every if run.trial_group == named]
        said = entries_of_lots(connection, [run.lot for run in made], KINDS)
        jars = tuple(_jar(run, said.get(run.lot, ())) for run in made)
        inputs = _inputs(connection, made)
        plan = with_name(plans(connection), named)
        factors = factors_of(jars, _background(made, inputs, jars))
        return Comparison(
            group=named,
            house=queries.house(connection),
            jars=jars,
            factors=tuple(factors),
            ages=tuple(
                age for _, age in AGES if any(jar.grade_at(age) is not None for jar in jars)
            ),
            front=front(jars),
            spread=spread(jars),
            held=_held(inputs),
            lots=tuple(
                {code: lot for had in inputs.values() for code, lot in had.items()}.values()
            ),
            uneven=_uneven(inputs, jars),
            outcome=outcome(plan, made, said, inputs, _lots(connection, plan)) if plan else None,
            seal=seal_on(connection),
        )


def _group(connection: Connection, every: Sequence[Run], text: str) -> str:
    wanted = " ".join(text.split())
    groups = dict.fromkeys(run.trial_group for run in every if run.trial_group)
    near = [group for group in groups if group.lower() == wanted.lower()]
    if not near and with_name(plans(connection), wanted):
        raise RefusedError(
            f'The trial "{wanted}" is planned, and no jar of it is begun.',
            f'Begin its jars: pottle start --from-plan "{wanted}"',
        )
    if not near:
        known = ", ".join(f'"{group}"' for group in list(groups)[:10])
        raise RefusedError(
            f'There is no trial "{wanted}" in the book.'
            + (f" Its trials: {known}." if known else " It has no trial yet."),
            f'Begin a batch of one: pottle start ... --trial "{wanted}" --factor rest=48h',
        )
    batches = sum(run.trial_group == near[0] for run in every)
    if batches == 1:
        raise RefusedError(
            f'The trial "{near[0]}" has one batch, and one batch compares with nothing.',
            f'Begin another of it: pottle start ... --trial "{near[0]}" --factor rest=48h',
        )
    return near[0]


def _jar(run: Run, said: Sequence[Entry]) -> Jar:
    factors: dict[str, str] = {}
    ntu = None
    for facts in (entry.facts for entry in said):
        match facts:
            case Start():
                factors = {factor.name.strip().lower(): factor.planned for factor in facts.factors}
            case Look(ntu_milli=int(milli)):
                ntu = Fraction(milli, 1000)
    is_control = not factors or CONTROL in factors
    return Jar(
        lot=run.code,
        factors={} if is_control else factors,
        is_control=is_control,
        grades=_grades(said),
        ntu=ntu,
        yield_pct=yield_of(said),
    )


def _grades(said: Sequence[Entry]) -> tuple[tuple[str, int], ...]:
    """Return the worst grade seen at each age since the making ended."""
    worst: dict[str, int] = {}
    for age, look in aged_looks(said):
        worst[age] = max(worst.get(age, 0), GRADES.index(look.grade))
    return tuple((age, worst[age]) for _, age in AGES if age in worst)


def _inputs(connection: Connection, made: Sequence[Run]) -> dict[str, dict[str, Lot]]:
    behind = lots_behind(connection, [run.lot for run in made])
    known = lots_by_number(connection, sorted({lot for lots in behind.values() for lot in lots}))
    return {
        run.code: {known[lot].code: known[lot] for lot in sorted(behind[run.lot])} for run in made
    }


def _held(inputs: Mapping[str, Mapping[str, Lot]]) -> tuple[Lot, ...]:
    shared = set.intersection(*(set(had) for had in inputs.values()))
    return tuple(brief for code, brief in next(iter(inputs.values())).items() if code in shared)


def _lots(connection: Connection, plan: Planned) -> frozenset[str]:
    """Return which levels of a plan are codes of lots."""
    levels = {level for item in plan.plan.factors for level in (item.usual, item.suspected)}
    return frozenset(level for level in levels if queries.lot_by_code(connection, level))


def _uneven(inputs: Mapping[str, Mapping[str, Lot]], jars: Sequence[Jar]) -> tuple[Uneven, ...]:
    """Return the bought materials that not every batch had of the same lot, but for factors."""
    planned = {level for jar in jars for level in jar.factors.values()}
    by_material: dict[str, dict[str, int]] = {}
    for had in inputs.values():
        for code, brief in had.items():
            if brief.material and brief.sort not in PACKING:
                counts = by_material.setdefault(brief.name, {})
                counts[code] = counts.get(code, 0) + 1
    return tuple(
        Uneven(name, tuple(sorted(counts.items())))
        for name, counts in by_material.items()
        if len(counts) > 1 and not planned & counts.keys()
    )


def _background(
    made: Sequence[Run], inputs: Mapping[str, Mapping[str, Lot]], jars: Iterable[Jar]
) -> dict[str, frozenset[str]]:
    """Return the lots and people that only some batches had, but for what a factor is about."""
    words = {
        word
        for jar in jars
        for name, level in jar.factors.items()
        for word in (*name.lower().split(), *level.lower().split())
    }
    lots_with: dict[str, frozenset[str]] = {}
    for code, brief in {
        code: brief for had in inputs.values() for code, brief in had.items()
    }.items():
        if not words & _about(brief):
            lots_with[f"{code} {brief.name}"] = frozenset(
                lot for lot, had in inputs.items() if code in had
            )
    for maker in dict.fromkeys(run.maker for run in made):
        lots_with[f"made by {maker}"] = frozenset(run.code for run in made if run.maker == maker)
    return lots_with


def _about(brief: Lot) -> set[str]:
    told = (brief.code, brief.name, brief.sort or "", (brief.material or "").replace("-", " "))
    return {word for text in told for word in text.lower().replace(",", " ").split()}
