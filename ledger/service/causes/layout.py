"""A planned trial laid out: which jar has which levels, in which order, under which mark.

Guarantees: all of it follows from the entry of the plan; a plan of a question that was planned
before is known as one. Refuses: to know what became of the jars.
"""

from collections.abc import Sequence
from fractions import Fraction

from msgspec import Struct

from ledger.domain.entries import Entry, Plan
from ledger.domain.evidence.draws import jars_of, lot_code, question_of
from ledger.errors import RefusedError
from ledger.science.statistics.designs import Row, design, unit_size
from ledger.service.causes.plan import level_of
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read.planned import plans


class PlannedJar(Struct, frozen=True):
    """One jar of a plan."""

    number: int
    """Its place in the order in which jars are made, from 1."""
    evening: int
    """The evening on which it is made, from 1."""
    code: str
    """Code of its lot, whose ending is written on it."""
    row: Row
    """For each factor whether it is at the suspected level."""
    levels: tuple[tuple[str, str], ...]
    """Each factor with its level."""


class Planned(Struct, frozen=True):
    """A plan with its jars."""

    entry: Entry[Plan]
    """The entry."""
    jars: tuple[PlannedJar, ...]
    """Its jars in the order in which they are made."""
    earlier: tuple[Entry[Plan], ...]
    """Plans of the same question before it, struck ones among them."""
    is_struck: bool
    """Whether it was struck."""

    @property
    def plan(self) -> Plan:
        """What was entered."""
        return self.entry.facts

    @property
    def level(self) -> Fraction:
        """The level it is judged at."""
        return level_of(self.plan)


def planned(book: Book, name: str) -> Planned:
    """Return the plan of a trial.

    Raises:
        RefusedError: No trial of that name is planned.
    """
    with book.reading() as connection:
        return planned_on(connection, name)


def planned_on(connection: Connection, name: str) -> Planned:
    """Return the plan of a trial, the last of that name; see `planned`."""
    every = plans(connection)
    found = with_name(every, name)
    if found is None:
        known = ", ".join(f'"{entry.facts.name}"' for entry, _ in every)
        raise RefusedError(
            f'No trial "{" ".join(name.split())}" is planned.'
            + (f" Planned are: {known}." if known else ""),
            'Plan one: pottle trial plan "NAME" --try LOT',
        )
    return found


def with_name(every: Sequence[tuple[Entry[Plan], bool]], name: str) -> Planned | None:
    """Return the last plan of that name, or None."""
    wanted = " ".join(name.split()).lower()
    for place, (entry, in_force) in reversed(list(enumerate(every))):
        if entry.facts.name.lower() == wanted:
            asked = question_of(entry.facts)
            earlier = (other for other, _ in every[:place] if question_of(other.facts) == asked)
            return Planned(entry, lay_out(entry.facts), tuple(earlier), not in_force)
    return None


def lay_out(plan: Plan) -> tuple[PlannedJar, ...]:
    """Return the jars of a plan in the order in which they are made."""
    sizes = [evening.jars for evening in plan.evenings]
    factors = len(plan.factors)
    rows = design(factors, sum(sizes) // unit_size(factors))
    return tuple(
        PlannedJar(
            number=jar.number,
            evening=jar.evening,
            code=lot_code(plan, jar.blind),
            row=rows[jar.row],
            levels=tuple(
                (item.name, item.suspected if is_suspected else item.usual)
                for item, is_suspected in zip(plan.factors, rows[jar.row], strict=True)
            ),
        )
        for jar in jars_of(plan)
    )
