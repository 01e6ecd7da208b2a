"""Tracing: back to all a lot is made of, forward to all that is made of it and who has it.

Guarantees: rework, rinse liquor, carried cake, top-ups and returns are walked like any addition.
Refuses: to follow entries out of force.
"""

from dataclasses import dataclass
from enum import StrEnum

from ledger.domain.entries import Move
from ledger.domain.entries.words import MoveAs
from ledger.domain.quantity import Measure, show
from ledger.service.book import Book
from ledger.service.scenes import known_lot
from ledger.store import queries, walk
from ledger.store.briefs import Brief, briefs
from ledger.store.engine import Connection


class Way(StrEnum):
    """Which way a lot was met."""

    HERE = "here"
    BACK = "back"
    FORWARD = "forward"


@dataclass(frozen=True, slots=True)
class Node:
    """A lot met on a trace."""

    brief: Brief
    """What it is."""
    depth: int
    """Fewest steps from the lot traced."""
    way: Way
    """Which way it was met."""


@dataclass(frozen=True, slots=True)
class Carried:
    """What went from one lot into another, in all."""

    source: str
    """Code of the lot it left."""
    target: str
    """Code of the lot it went into."""
    amount: int
    """How much, in the source's measure; 0: carried, not measured."""
    measure: Measure
    """The source's measure."""

    @property
    def words(self) -> str:
        """The amount for people."""
        return show(self.amount, self.measure) if self.amount else "carried, not measured"


@dataclass(frozen=True, slots=True)
class Holder:
    """Somebody who was sent a lot, or sent some back."""

    lot: str
    """Code of the lot."""
    party: str | None
    """Who, if anybody was named."""
    moved_as: MoveAs
    """How it went."""
    amount: int
    """How much, in the lot's measure; below zero what came back."""
    measure: Measure
    """The lot's measure."""
    on: str
    """Local day, ISO."""
    document: str | None
    """Delivery note, invoice or stall sheet."""


@dataclass(frozen=True, slots=True)
class Trace:
    """A lot with all it is made of and all that is made of it."""

    lot: Brief
    """The lot traced."""
    nodes: tuple[Node, ...]
    """The lot, then the lots back, then those forward, each nearest first."""
    edges: tuple[Carried, ...]
    """What went into what, between those lots."""
    holders: tuple[Holder, ...]
    """Where the lot and all forward of it went, by lot and day."""


def trace(
    book: Book, code: str, *, back: bool = True, forward: bool = True, deepest: int | None = None
) -> Trace:
    """Trace a lot, named by its whole code.

    Raises:
        RefusedError: The lot is not in the book.
    """
    with book.reading() as connection:
        return trace_on(connection, code, back=back, forward=forward, deepest=deepest)


def trace_on(
    connection: Connection,
    code: str,
    *,
    back: bool = True,
    forward: bool = True,
    deepest: int | None = None,
) -> Trace:
    """Trace a lot in an open transaction; as `trace`."""
    number = known_lot(connection, code).seq
    limit = walk.DEEPEST if deepest is None else deepest
    behind = walk.back(connection, number, limit)[1:] if back else []
    ahead = walk.forward(connection, number, limit)[1:] if forward else []
    found = briefs(connection, [number, *(met.lot for met in (*behind, *ahead))])
    return Trace(
        lot=found[number],
        nodes=(
            Node(found[number], 0, Way.HERE),
            *(Node(found[met.lot], met.depth, Way.BACK) for met in behind),
            *(Node(found[met.lot], met.depth, Way.FORWARD) for met in ahead),
        ),
        edges=_edges(connection, found),
        holders=tuple(
            holder
            for lot in (number, *(met.lot for met in ahead))
            for holder in holders_of(connection, found[lot])
        ),
    )


def _edges(connection: Connection, found: dict[int, Brief]) -> tuple[Carried, ...]:
    return tuple(
        Carried(
            found[edge.source].code, found[edge.target].code, edge.taken, found[edge.source].measure
        )
        for target in found
        for edge in walk.edges_into(connection, target)
        if edge.source in found
    )


def holders_of(connection: Connection, lot: Brief) -> tuple[Holder, ...]:
    """Return where a lot went outside the house, by when."""
    return tuple(
        _holder(lot, entry.draft.facts, f"{entry.draft.happened.local():%Y-%m-%d}")
        for entry in queries.entries_of_lot(connection, lot.lot)
        if isinstance(entry.draft.facts, Move)
    )


def _holder(lot: Brief, facts: Move, on: str) -> Holder:
    came_back = facts.moved_as is MoveAs.RETURNED
    return Holder(
        lot=lot.code,
        party=facts.party,
        moved_as=facts.moved_as,
        amount=-facts.amount.amount if came_back else facts.amount.amount,
        measure=lot.measure,
        on=on,
        document=facts.document,
    )
