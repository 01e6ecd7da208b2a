"""What came, was made and went out in a period, as an outsider follows it.

Guarantees: entries in force only; what a lot was made of is told with how much of each was taken.
Refuses: prices.
"""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from ledger.domain.entries import Bottle, Entry, FactsT, Finish, House, Move, Party, Receipt
from ledger.domain.entries.choices import MoveAs
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.service.desk.book import Book
from ledger.service.lots.sales import Period
from ledger.service.recall.trail import Received, Sent, Transformed
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.lots import lots_by_number
from ledger.store.read.walk import edges_into


class Events(Struct, frozen=True):
    """All critical tracking events of a period."""

    house: House | None
    """The house."""
    parties: Mapping[str, Party]
    """How to reach people, by name."""
    received: tuple[Received, ...]
    """What came in, and came back."""
    transformed: tuple[Transformed, ...]
    """What was made and filled."""
    sent: tuple[Sent, ...]
    """What went to people."""


def events_of(book: Book, period: Period) -> Events:
    """Return what came, was made and went out in a period."""
    with book.reading() as connection:
        came = _in(connection, Receipt, period)
        moved = _in(connection, Move, period)
        done = (*_in(connection, Finish, period), *_in(connection, Bottle, period))
        lots = _lots(connection, (*came, *moved, *done))
        return Events(
            house=queries.house(connection),
            parties={party.name: party for party in queries.parties(connection)},
            received=(
                *(item for entry in came for item in _received(lots, entry)),
                *(item for entry in moved for item in _returned(lots, entry)),
            ),
            transformed=tuple(_transformed(connection, lots, done)),
            sent=tuple(item for entry in moved for item in _sent(lots, entry)),
        )


def _in(connection: Connection, kind: type[FactsT], period: Period) -> tuple[Entry[FactsT], ...]:
    found = queries.entries_of_kind(connection, kind)
    return tuple(sorted(filter(period.holds, found), key=lambda entry: entry.position))


def _lots(connection: Connection, entries: tuple[Entry, ...]) -> dict[str, Lot]:
    codes = sorted({code for entry in entries if (code := entry.draft.lot)})
    rows = (queries.lot_by_code(connection, code) for code in codes)
    known = lots_by_number(connection, sorted(row.seq for row in rows if row))
    return {lot.code: lot for lot in known.values()}


def _received(lots: Mapping[str, Lot], entry: Entry[Receipt]) -> Iterator[Received]:
    facts, lot = entry.facts, lots.get(entry.draft.lot or "")
    if lot:
        amount = facts.amount.amount
        yield Received(lot, facts.supplier, amount, _day(entry), facts.document, is_return=False)


def _returned(lots: Mapping[str, Lot], entry: Entry[Move]) -> Iterator[Received]:
    facts, lot = entry.facts, lots.get(entry.draft.lot or "")
    if lot and facts.moved_as is MoveAs.RETURNED:
        amount = facts.amount.amount
        yield Received(lot, facts.party, amount, _day(entry), facts.document, is_return=True)


def _sent(lots: Mapping[str, Lot], entry: Entry[Move]) -> Iterator[Sent]:
    facts, lot = entry.facts, lots.get(entry.draft.lot or "")
    if lot and facts.moved_as in GOES_TO_PEOPLE:
        yield Sent(lot, facts.party, facts.amount.amount, _day(entry), facts.document)


def _transformed(
    connection: Connection, lots: Mapping[str, Lot], done: tuple[Entry, ...]
) -> Iterator[Transformed]:
    # A batch that was finished twice, since something went in again, is told as it ended.
    last = {entry.draft.lot or "": entry for entry in done if entry.draft.lot in lots}
    numbers = [lots[code].seq for code in last]
    into: dict[int, list[tuple[int, int]]] = {}
    for edge in edges_into(connection, numbers):
        into.setdefault(edge.target, []).append((edge.source, edge.taken))
    sources = lots_by_number(
        connection, sorted({source for taken in into.values() for source, _ in taken})
    )
    for code, entry in last.items():
        lot = lots[code]
        taken = tuple((sources[number], much) for number, much in into.get(lot.seq, ()))
        yield Transformed(lot, _made(entry), _day(entry), entry.seq, taken)


def _made(entry: Entry) -> int:
    facts = entry.facts
    if isinstance(facts, Bottle):
        return facts.count * 10**6
    return facts.volume.amount if isinstance(facts, Finish) else 0


def _day(entry: Entry) -> str:
    return f"{entry.draft.happened.local():%Y-%m-%d}"
