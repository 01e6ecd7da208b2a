"""A trace with how much is carried along it.

Guarantees: trace and amounts are of one view of the book; amounts follow every way there is, also
those a depth leaves out of sight. Refuses: to follow a circle in a damaged book; it is named.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind, Place
from ledger.domain.lots.lot import Lot
from ledger.science.contents.shares import Carrying, Ways, carried
from ledger.service.account.dates import with_dates
from ledger.service.desk.book import Book, Tick
from ledger.service.lots.trace import Carried, Trace, trace_on
from ledger.store.engine.connections import Connection
from ledger.store.read.turnover import Turnover, turnovers


class Share(Struct, frozen=True):
    """How much of one lot is in another."""

    amount: float
    """How much is carried, in the smallest unit of the lot it comes from."""
    measure: Measure
    """Measure of the lot it comes from."""
    whole: int
    """How much there was in all of the lot it is in."""
    whole_measure: Measure
    """Measure of that lot."""
    is_all: bool
    """Whether every way was measured; else there is at least this much."""


class Traced(Struct, frozen=True):
    """A trace with its amounts."""

    trace: Trace
    """The trace."""
    behind: Mapping[str, Share]
    """For each lot the traced one is made of, how much of it is in the traced one."""
    ahead: Mapping[str, Share]
    """For each lot made of the traced one, how much of the traced one is in it."""
    wasted: Mapping[str, int]
    """What was poured away of each lot, where anything was."""
    circles: tuple[tuple[str, ...], ...]
    """Circles in a damaged book: codes, each lot gone into the next and the last into the first."""
    hidden: int = 0
    """Lots further away than was asked for."""


def traced(
    book: Book,
    code: str,
    *,
    back: bool = True,
    forward: bool = True,
    tick: Tick = lambda _done, _total: None,
) -> Traced:
    """Trace a lot, named by its whole code, with the amounts carried.

    Raises:
        RefusedError: The lot is not in the book.
    """
    with book.reading() as connection:
        return traced_on(connection, code, back=back, forward=forward, tick=tick)


def with_days(book: Book, traced_lot: Traced) -> Traced:
    """Return a trace with the best-before dates that are reckoned for its lots."""
    nodes = traced_lot.trace.nodes
    with book.reading() as connection:
        known = with_dates(connection, {node.brief.seq: node.brief for node in nodes})
    dated = tuple(replace(node, brief=known[node.brief.seq]) for node in nodes)
    return replace(traced_lot, trace=replace(traced_lot.trace, nodes=dated))


def traced_on(
    connection: Connection,
    code: str,
    *,
    back: bool = True,
    forward: bool = True,
    tick: Tick = lambda _done, _total: None,
) -> Traced:
    """Trace a lot with the amounts carried, in an open transaction; as `traced`."""
    walked = trace_on(connection, code, back=back, forward=forward)
    lots = {node.brief.code: node.brief for node in walked.nodes}
    turned = turnovers(connection, (brief.seq for brief in lots.values()), tick)
    wholes = {lot: turned[brief.seq].whole(brief.on_hand) for lot, brief in lots.items()}
    behind, circles = _reckoned(code, sources(walked.edges) if back else {}, wholes)
    ahead, more = _reckoned(code, targets(walked.edges) if forward else {}, wholes)
    here = walked.lot
    return Traced(
        trace=walked,
        behind={
            lot: _share(carrying, lots[lot], here, wholes[code]) for lot, carrying in behind.items()
        },
        ahead={
            lot: _share(carrying, here, lots[lot], wholes[lot]) for lot, carrying in ahead.items()
        },
        wasted=_wasted(lots, turned),
        # Those met on the way back were walked against the way that things went.
        circles=_once([*(tuple(reversed(circle)) for circle in circles), *more]),
    )


def _reckoned(
    code: str, ways: Ways, wholes: Mapping[str, int]
) -> tuple[dict[str, Carrying], tuple[tuple[str, ...], ...]]:
    amounts, order = carried(code, ways, wholes)
    return {lot: amounts[lot] for lot in order.lots if lot != code}, order.circles


def _share(carrying: Carrying, source: Lot, target: Lot, whole: int) -> Share:
    return Share(carrying.amount, source.measure, whole, target.measure, carrying.is_all)


def _wasted(lots: Mapping[str, Lot], turned: Mapping[int, Turnover]) -> dict[str, int]:
    waste = {lot: turned[brief.seq].gone.get(Place.WASTE, 0) for lot, brief in lots.items()}
    return {lot: amount for lot, amount in waste.items() if amount}


def _once(circles: Sequence[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Return circles turned so that each begins with its first code, none twice."""
    turned = (circle[(at := circle.index(min(circle))) :] + circle[:at] for circle in circles)
    return tuple(dict.fromkeys(turned))


def sources(edges: Sequence[Carried]) -> dict[str, list[tuple[str, int]]]:
    """Return for each lot what went into it: lot and amount, in the order it first went in."""
    went_in: dict[str, list[tuple[str, int]]] = {}
    for edge in edges:
        went_in.setdefault(edge.target, []).append((edge.source, edge.amount))
    return went_in


def targets(edges: Sequence[Carried]) -> dict[str, list[tuple[str, int]]]:
    """Return for each lot what it went into: lot and amount."""
    went_into: dict[str, list[tuple[str, int]]] = {}
    for edge in edges:
        went_into.setdefault(edge.source, []).append((edge.target, edge.amount))
    return went_into


def no_deeper(traced_lot: Traced, depth: int | None) -> Traced:
    """Return a trace without what is more steps away than `depth`; its amounts stay."""
    if depth is None:
        return traced_lot
    near = {node.brief.code for node in traced_lot.trace.nodes if node.depth <= depth}
    return _kept(traced_lot, near)


def only_kind(traced_lot: Traced, kind: MaterialKind) -> Traced:
    """Return the part of a trace back that leads to materials of one kind."""
    wanted = [node.brief.code for node in traced_lot.trace.nodes if node.brief.sort == kind]
    # From the materials forward, so that only ways are kept that lead to one.
    ways, kept = targets(traced_lot.trace.edges), set[str]()
    while wanted:
        lot = wanted.pop()
        if lot not in kept:
            kept.add(lot)
            wanted += [other for other, _ in ways.get(lot, ())]
    return replace(_kept(traced_lot, kept | {traced_lot.trace.lot.code}), hidden=traced_lot.hidden)


def _kept(traced_lot: Traced, codes: set[str]) -> Traced:
    trace = traced_lot.trace
    nodes = tuple(node for node in trace.nodes if node.brief.code in codes)
    return replace(
        traced_lot,
        trace=replace(
            trace,
            nodes=nodes,
            edges=tuple(e for e in trace.edges if e.source in codes and e.target in codes),
            holders=tuple(holder for holder in trace.holders if holder.lot in codes),
        ),
        hidden=traced_lot.hidden + len(trace.nodes) - len(nodes),
    )
