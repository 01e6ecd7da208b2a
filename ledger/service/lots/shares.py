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
from ledger.science.contents.shares import Carrying, Stays, stays_as
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
    """How much there was of the lot it is in when that was last made up of anything."""
    whole_measure: Measure
    """Measure of that lot."""
    is_all: bool
    """Whether every way was measured; else there is at least this much."""
    is_in_cake: bool = False
    """Whether it stays in the cake, so that none is in what runs through."""


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


def with_days(book: Book, found: Traced) -> Traced:
    """Return a trace with the best-before dates that are reckoned for its lots."""
    nodes = found.trace.nodes
    with book.reading() as connection:
        known = with_dates(connection, {node.brief.seq: node.brief for node in nodes})
    dated = tuple(replace(node, brief=known[node.brief.seq]) for node in nodes)
    return replace(found, trace=replace(found.trace, nodes=dated))


def traced_on(
    connection: Connection,
    code: str,
    *,
    back: bool = True,
    forward: bool = True,
    tick: Tick = lambda _done, _total: None,
) -> Traced:
    """Trace a lot with the amounts carried, in an open transaction; as `traced`."""
    found = trace_on(connection, code, back=back, forward=forward)
    lots = {node.brief.code: node.brief for node in found.nodes}
    here = found.lot
    turned = turnovers(connection, (brief.seq for brief in lots.values()), tick)
    return Traced(
        trace=found,
        behind={lot: _share(item, lots[lot], here) for lot, item in found.behind.items()},
        ahead={lot: _share(item, here, lots[lot]) for lot, item in found.ahead.items()},
        wasted=_wasted(lots, turned),
    )


def _share(item: Carrying, source: Lot, target: Lot) -> Share:
    return Share(
        amount=item.amount,
        measure=source.measure,
        whole=round(item.whole),
        whole_measure=target.measure,
        is_all=item.is_all,
        is_in_cake=stays_as(source.sort) is Stays.IN_CAKE,
    )


def _wasted(lots: Mapping[str, Lot], turned: Mapping[int, Turnover]) -> dict[str, int]:
    waste = {lot: turned[brief.seq].gone.get(Place.WASTE, 0) for lot, brief in lots.items()}
    return {lot: amount for lot, amount in waste.items() if amount}


def targets(edges: Sequence[Carried]) -> dict[str, list[tuple[str, int]]]:
    """Return for each lot what it went into: lot and amount."""
    found: dict[str, list[tuple[str, int]]] = {}
    for edge in edges:
        found.setdefault(edge.source, []).append((edge.target, edge.amount))
    return found


def no_deeper(found: Traced, depth: int | None) -> Traced:
    """Return a trace without what is more steps away than `depth`; its amounts stay."""
    if depth is None:
        return found
    near = {node.brief.code for node in found.trace.nodes if node.depth <= depth}
    return _kept(found, near)


def only_kind(found: Traced, kind: MaterialKind) -> Traced:
    """Return the part of a trace back that leads to materials of one kind."""
    wanted = [node.brief.code for node in found.trace.nodes if node.brief.sort == kind]
    ways, kept = targets(found.trace.edges), set[str]()
    while wanted:
        lot = wanted.pop()
        if lot not in kept:
            kept.add(lot)
            wanted += [other for other, _ in ways.get(lot, ())]
    return replace(_kept(found, kept | {found.trace.lot.code}), hidden=found.hidden)


def _kept(found: Traced, codes: set[str]) -> Traced:
    trace = found.trace
    nodes = tuple(node for node in trace.nodes if node.brief.code in codes)
    return replace(
        found,
        trace=replace(
            trace,
            nodes=nodes,
            edges=tuple(e for e in trace.edges if e.source in codes and e.target in codes),
            holders=tuple(item for item in trace.holders if item.lot in codes),
        ),
        hidden=found.hidden + len(trace.nodes) - len(nodes),
    )
