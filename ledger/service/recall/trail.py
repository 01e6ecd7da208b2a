"""What of a recall an outsider must be able to follow: received, transformed, sent.

Guarantees: of inputs only the recalled lots themselves are told, so no recipe leaves; no price is
read. Refuses: struck lots and entries out of force.
"""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from ledger.domain.entries import Entry, Finish, Move, Party, Receipt
from ledger.domain.entries.choices import LotType, MoveAs
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.service.desk.book import Book
from ledger.service.lots.trace import trace_on
from ledger.service.recall.standing import Recall, recall_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


class Received(Struct, frozen=True):
    """A lot that came into the house, or goods that came back."""

    brief: Lot
    """The lot."""
    source: str | None
    """Who sent it."""
    amount: int
    """How much, in the lot's measure."""
    on: str
    """Local day, ISO."""
    document: str | None
    """Number of the delivery note or invoice."""
    is_return: bool
    """Whether it is of our own making and came back."""


class Transformed(Struct, frozen=True):
    """A lot made or filled here, with the recalled lots that went into it."""

    brief: Lot
    """The lot."""
    made: int
    """How much came out, in its measure."""
    on: str
    """Local day on which it was done, ISO; empty while it is not."""
    entry: int | None
    """Number of the entry that says so."""
    inputs: tuple[tuple[Lot, int], ...]
    """Recalled lots that went in, each with what of it; 0: carried, not measured."""


class Sent(Struct, frozen=True):
    """Goods that went to somebody."""

    brief: Lot
    """The lot."""
    to: str | None
    """Who was sent them."""
    amount: int
    """How much, in the lot's measure."""
    on: str
    """Local day, ISO."""
    document: str | None
    """Delivery note, invoice or stall sheet."""


class Trail(Struct, frozen=True):
    """A recall with all that was received, transformed and sent on its way."""

    recall: Recall
    """The recall."""
    received: tuple[Received, ...]
    """Deliveries of what the lot is made of, and of itself; then goods that came back."""
    transformed: tuple[Transformed, ...]
    """Lots made here, nearest first."""
    sent: tuple[Sent, ...]
    """Goods sent to people, by lot and day."""
    parties: Mapping[str, Party]
    """How to reach people, by name."""


def trail_of(book: Book, code: str) -> Trail:
    """Return a recall with what an outsider must be able to follow, by the lot's whole code."""
    with book.reading() as connection:
        return _trail(connection, recall_on(connection, code))


def _trail(connection: Connection, recall: Recall) -> Trail:
    behind = [n.brief for n in trace_on(connection, recall.lot.code, forward=False).nodes]
    lots = {item.brief.code: item.brief for item in recall.lots}
    moved = [(lot, entry) for lot in lots.values() for entry in _moves(connection, lot)]
    return Trail(
        recall=recall,
        received=(
            *(item for lot in behind for item in _receipts(connection, lot)),
            *(item for lot, entry in moved for item in _returns(lot, entry)),
        ),
        transformed=tuple(_transformed(connection, recall)),
        sent=tuple(item for lot, entry in moved for item in _deliveries(lot, entry)),
        parties={party.name: party for party in queries.parties(connection)},
    )


def _moves(connection: Connection, lot: Lot) -> tuple[Entry, ...]:
    entries = queries.entries_of_lot(connection, lot.seq)
    return tuple(entry for entry in entries if isinstance(entry.facts, Move))


def _receipts(connection: Connection, lot: Lot) -> Iterator[Received]:
    # Only what was bought has a material, and a receipt.
    for entry in queries.entries_of_lot(connection, lot.seq) if lot.material else ():
        facts = entry.facts
        if isinstance(facts, Receipt):
            amount, supplier = facts.amount.amount, facts.supplier
            yield Received(lot, supplier, amount, _day(entry), facts.document, is_return=False)


def _returns(lot: Lot, entry: Entry) -> Iterator[Received]:
    facts = entry.facts
    if isinstance(facts, Move) and facts.moved_as is MoveAs.RETURNED:
        amount, party = facts.amount.amount, facts.party
        yield Received(lot, party, amount, _day(entry), facts.document, is_return=True)


def _deliveries(lot: Lot, entry: Entry) -> Iterator[Sent]:
    facts = entry.facts
    if isinstance(facts, Move) and facts.moved_as in GOES_TO_PEOPLE:
        yield Sent(lot, facts.party, facts.amount.amount, _day(entry), facts.document)


def _transformed(connection: Connection, recall: Recall) -> Iterator[Transformed]:
    lots = {recalled.brief.code: recalled.brief for recalled in recall.lots}
    for recalled in recall.lots:
        if recalled.brief.lot_type is LotType.RECEIVED:
            continue
        entries = queries.entries_of_lot(connection, recalled.brief.seq)
        done = [entry for entry in entries if _completes(entry, recalled.brief)]
        into = [edge for edge in recall.trace.edges if edge.target == recalled.brief.code]
        yield Transformed(
            recalled.brief,
            recalled.balance.made,
            _day(done[-1]) if done else "",
            done[-1].seq if done else None,
            tuple((lots[edge.source], edge.amount) for edge in into if edge.source in lots),
        )


def _completes(entry: Entry, lot: Lot) -> bool:
    """Tell whether a lot is there from this entry on: a batch when finished, others when opened."""
    if lot.lot_type is LotType.MADE:
        return isinstance(entry.facts, Finish)
    return entry.stands_for == lot.seq


def _day(entry: Entry) -> str:
    return f"{entry.draft.happened.local():%Y-%m-%d}"
