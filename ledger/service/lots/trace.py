"""Tracing: back to all a lot is made of, forward to all that is made of it and who has it.

Guarantees: rework, rinse liquor, carried cake, top-ups and returns are walked like any addition.
Refuses: to follow entries out of force.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from enum import StrEnum

from msgspec import Struct, field
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries.choices import MoveAs
from ledger.domain.lots.lot import Lot
from ledger.science.contents.shares import Carrying
from ledger.service.account.codes import known_lot
from ledger.service.account.lots import lots_by_number
from ledger.service.desk.book import Book
from ledger.service.lots.reach import Reach, reach_on
from ledger.store.ahead.traced import foresee_mixed
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.statements import chunks
from ledger.store.read import lots, sent, walk
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
    """A lot with all it is made of and all that is made of it.

    A lot is of it when anything of the one can have been in the other at any time.
    """

    lot: Lot
    """The lot traced."""
    nodes: tuple[Node, ...]
    """The lot, then the lots back, then those forward, each nearest first."""
    edges: tuple[Carried, ...]
    """What went into what, between those lots, by the lot it went into as these come."""
    holders: tuple[Holder, ...]
    """Where the lot and all forward of it went, by lot and day."""
    behind: Mapping[str, Carrying] = field(default_factory=dict)
    """For each lot it is made of, how much of it is in the lot; unless only near ones were asked
    for."""
    ahead: Mapping[str, Carrying] = field(default_factory=dict)
    """For each lot made of it, how much of the lot is in it; likewise."""
    circles: tuple[tuple[str, ...], ...] = ()
    """Circles in a damaged book: codes, each lot gone into the next and the last into the first."""


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
    if deepest is not None:
        return _near(connection, known_lot(connection, code).seq, (back, forward), deepest)
    return traced_on(connection, reach_on(connection, code, back=back, forward=forward))


def traced_on(connection: Connection, reach: Reach) -> Trace:
    """Return the trace of a lot that reaches so far."""
    foresee(connection, lambda foreseen: foresee_traced(foreseen, reach))
    found, moves = abreast(
        connection,
        lambda: lots_by_number(connection, reach.lots.values()),
        lambda: list(sent.moves_from(connection, reach.onward)),
    )
    return replace(
        _told(found, reach.edges, reach.back, reach.onward, moves),
        behind=reach.behind.shares.lots,
        ahead=reach.ahead.shares.lots,
        circles=_once((*reach.behind.circles, *reach.ahead.circles)),
    )


def foresee_traced(foreseen: Foreseen, reach: Reach) -> None:
    """Foretell what is asked of the lots that are met."""
    numbers = list(reach.lots.values())
    lots.foresee_lots(foreseen, numbers)
    foresee_mixed(foreseen, numbers)
    for part in chunks(reach.onward):
        foreseen.asks(sent.move_rows, part)


def holders_on(connection: Connection, reach: Reach) -> tuple[Holder, ...]:
    """Return where a lot and all forward of it went, by lot and day."""
    found = lots.lots_by_number(connection, reach.onward)
    return tuple(_holder(found[it.lot], it) for it in sent.moves_from(connection, reach.onward))


def met_on(connection: Connection, reach: Reach) -> list[Lot]:
    """Return the lots of a trace as it has them, of a mixture without what is reckoned of it."""
    found = lots.lots_by_number(connection, reach.lots.values())
    return [node.brief for node in _told(found, reach.edges, reach.back, reach.onward, ()).nodes]


def _near(connection: Connection, lot: int, ways: tuple[bool, bool], deepest: int) -> Trace:
    """Trace a lot a few steps far, by what went in and out, without what of it is carried."""
    behind = walk.back(connection, lot, deepest) if ways[0] else [lot]
    ahead = walk.forward(connection, lot, deepest) if ways[1] else [lot]
    found = lots_by_number(connection, [*behind, *ahead])
    edges = [edge for edge in walk.edges_into(connection, list(found)) if edge.source in found]
    return _told(found, edges, behind, ahead, sent.moves_from(connection, ahead))


def _told(
    found: dict[int, Lot],
    edges: list[Edge],
    behind: list[int],
    ahead: list[int],
    moves: Iterable[Moved],
) -> Trace:
    number = behind[0]
    away = {
        Way.BACK: walk.steps_from(number, ((edge.target, edge.source) for edge in edges)),
        Way.FORWARD: walk.steps_from(number, ((edge.source, edge.target) for edge in edges)),
    }
    nodes = (
        Node(found[number], 0, Way.HERE),
        *_nodes(found, behind[1:], Way.BACK, away[Way.BACK]),
        *_nodes(found, ahead[1:], Way.FORWARD, away[Way.FORWARD]),
    )
    place = {node.brief.seq: place for place, node in enumerate(nodes)}
    return Trace(
        lot=found[number],
        nodes=nodes,
        edges=tuple(
            _carried(found, edge) for edge in sorted(edges, key=lambda edge: place[edge.target])
        ),
        holders=tuple(_holder(found[moved.lot], moved) for moved in moves),
    )


def _once(circles: Sequence[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Return circles by what went into what, each from its first code on, none twice."""
    ways = (tuple(reversed(circle)) for circle in circles)
    turned = (circle[(at := circle.index(min(circle))) :] + circle[:at] for circle in ways)
    return tuple(dict.fromkeys(turned))


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


def _nodes(
    found: dict[int, Lot], lots: list[int], way: Way, away: dict[int, int]
) -> Iterator[Node]:
    for lot in sorted(lots, key=lambda lot: (away[lot], lot)):
        yield Node(found[lot], away[lot], way)


def _carried(found: dict[int, Lot], edge: Edge) -> Carried:
    source, target = found[edge.source], found[edge.target]
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
