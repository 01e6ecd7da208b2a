"""Tracing: back to all a lot is made of, forward to all that is made of it and who has it.

Guarantees: rework, rinse liquor, carried cake, top-ups and returns are walked like any addition.
Refuses: to follow entries out of force.
"""

from collections.abc import Iterable, Iterator
from datetime import datetime
from enum import StrEnum

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries.choices import MoveAs
from ledger.domain.lots.lot import Lot
from ledger.service.account.codes import known_lot
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import sent, walk
from ledger.store.read.lots import lots_by_number
from ledger.store.read.sent import Moved
from ledger.store.read.walk import Edge


class Way(StrEnum):
    """Which way a lot was met."""

    HERE = "here"
    BACK = "back"
    FORWARD = "forward"


class Node(Struct, frozen=True):
    """A lot met on a trace."""

    brief: Lot
    """What it is."""
    depth: int
    """Fewest steps from the lot traced."""
    way: Way
    """Which way it was met."""


class Carried(Struct, frozen=True):
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


class Holder(Struct, frozen=True):
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
    position: tuple[datetime, int]
    """Its place among all entries: by when it happened, then by number."""


class Trace(Struct, frozen=True):
    """A lot with all it is made of and all that is made of it."""

    lot: Lot
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
    behind = walk.back(connection, number, deepest) if back else [number]
    ahead = walk.forward(connection, number, deepest) if forward else [number]
    met = lots_by_number(connection, [*behind, *ahead])
    # Something else may have gone into them that was not asked for: it lies deeper, or the other
    # way.
    edges = [edge for edge in walk.edges_into(connection, list(met)) if edge.source in met]
    away = {
        Way.BACK: walk.steps_from(number, ((edge.target, edge.source) for edge in edges)),
        Way.FORWARD: walk.steps_from(number, ((edge.source, edge.target) for edge in edges)),
    }
    return Trace(
        lot=met[number],
        nodes=(
            Node(met[number], 0, Way.HERE),
            *_nodes(met, behind[1:], Way.BACK, away[Way.BACK]),
            *_nodes(met, ahead[1:], Way.FORWARD, away[Way.FORWARD]),
        ),
        edges=tuple(_carried(met, edge) for edge in edges),
        holders=tuple(
            _holder(met[moved.lot], moved) for moved in sent.moves_from(connection, ahead)
        ),
    )


def ahead_of(code: str, edges: Iterable[Carried]) -> frozenset[str]:
    """Return the codes of a lot and of all that is made of it, by the edges of a trace."""
    made_of: dict[str, list[str]] = {}
    for edge in edges:
        made_of.setdefault(edge.source, []).append(edge.target)
    met, waiting = {code}, [code]
    while waiting:
        for target in made_of.get(waiting.pop(), ()):
            if target not in met:
                met.add(target)
                waiting.append(target)
    return frozenset(met)


def _nodes(met: dict[int, Lot], lots: list[int], way: Way, away: dict[int, int]) -> Iterator[Node]:
    for lot in sorted(lots, key=lambda lot: (away[lot], lot)):
        yield Node(met[lot], away[lot], way)


def _carried(met: dict[int, Lot], edge: Edge) -> Carried:
    source, target = met[edge.source], met[edge.target]
    return Carried(source.code, target.code, edge.taken, source.measure)


def _holder(lot: Lot, moved: Moved) -> Holder:
    came_back = moved.moved_as is MoveAs.RETURNED
    return Holder(
        lot=lot.code,
        party=moved.party,
        moved_as=moved.moved_as,
        amount=-moved.amount if came_back else moved.amount,
        measure=lot.measure,
        on=f"{moved.happened.local():%Y-%m-%d}",
        document=moved.document,
        position=(moved.happened.at, moved.stands_for),
    )
