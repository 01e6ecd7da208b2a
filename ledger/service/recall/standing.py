"""How far a recall is: its lots, where all of them are, whom to call and what was done.

Guarantees: it is a read of the book, of one moment; a recall that nobody began reads as it would
stand. Refuses: lots that were struck out, and calls made before it began.
"""

from collections.abc import Iterable
from functools import partial
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Closing, Contact, Entry, House, Judge, Party, entries_of
from ledger.domain.entries.choices import LotType, Verdict
from ledger.domain.lots.balance import Balance
from ledger.domain.lots.lot import Lot, Status
from ledger.service.account.dates import with_dates
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import Seal, seal_on
from ledger.service.lots.reach import Reach, reach_on
from ledger.service.lots.trace import (
    Holder,
    Trace,
    Way,
    ahead_of,
    foresee_traced,
    traced_on,
)
from ledger.service.recall.balance import RecalledLot, balances, counted_in, total
from ledger.service.recall.calls import ToCall, to_call
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries, turnover
from ledger.store.read.end import end_of
from ledger.store.read.made import bottle_sizes, finished
from ledger.store.read.people import details, every_code, shown_rows


class Recall(Struct, frozen=True):
    """A recall as it stands, or as it would."""

    lot: Lot
    """The lot recalled."""
    lots: tuple[RecalledLot, ...]
    """The lot and all made of it, nearest first, without struck ones."""
    balance: Balance
    """Where all bottles are; of a lot that was never bottled, where the lot itself is."""
    measure: Measure
    """What that balance counts in."""
    holders: tuple[Holder, ...]
    """What went out and came back, by lot and day."""
    to_call: tuple[ToCall, ...]
    """Whom to call, in order."""
    contacts: tuple[Entry[Contact], ...]
    """The calls made since it began."""
    begun: Entry[Judge] | None
    """The entry that began it; None while nothing is recalled."""
    closed: Entry[Closing] | None
    """The entry that closed it."""
    trace: Trace
    """The trace forward."""
    house: House | None
    """The house."""
    seal: Seal
    """The seal of the book as it was read."""

    @property
    def not_held(self) -> tuple[str, ...]:
        """Codes of its lots that are not recalled."""
        lots = (recalled.brief for recalled in self.lots)
        return tuple(lot.code for lot in lots if lot.status is not Status.RECALLED)

    @property
    def packed(self) -> tuple[RecalledLot, ...]:
        """Its lots of bottles."""
        return tuple(
            recalled for recalled in self.lots if recalled.brief.lot_type is LotType.PACKED
        )


def recall_of(book: Book, code: str) -> Recall:
    """Return a recall as it stands, or as it would, by the lot's whole code."""
    with book.reading() as connection:
        return recall_on(connection, code)


def with_days(book: Book, recall: Recall) -> Recall:
    """Return a recall with the best-before dates that are reckoned for its lots."""
    with book.reading() as connection:
        known = with_dates(
            connection, {recalled.brief.seq: recalled.brief for recalled in recall.lots}
        )
    dated = tuple(replace(recalled, brief=known[recalled.brief.seq]) for recalled in recall.lots)
    return replace(recall, lots=dated)


def recall_on(connection: Connection, code: str) -> Recall:
    """Return a recall in an open transaction; as `recall_of`."""
    reach = reach_on(connection, code, back=False)
    foresee(connection, lambda foreseen: _ahead(foreseen, reach))
    traced = traced_on(connection, reach)
    kept = [node.brief for node in traced.nodes if node.way in (Way.HERE, Way.FORWARD)]
    kept = [brief for brief in kept if brief.status is not Status.STRUCK]
    lots = balances(connection, kept, traced.holders)
    begun, closed = course(connection, traced.lot.seq)
    contacts = _contacts(connection, {brief.code for brief in kept}, begun)
    return Recall(
        lot=traced.lot,
        lots=lots,
        balance=total(traced.lot, lots),
        measure=counted_in(traced.lot, lots),
        holders=traced.holders,
        to_call=_to_call(connection, traced, kept, contacts),
        contacts=contacts,
        begun=begun,
        closed=closed,
        trace=traced,
        house=queries.house(connection),
        seal=seal_on(connection),
    )


def _ahead(foreseen: Foreseen, reach: Reach) -> None:
    """Foretell what is asked of a recall whose lots are met, where none of them is struck."""
    foresee_traced(foreseen, reach)
    foreseen.asks(queries.entries_of_lot, reach.row.seq)
    for reader in (*turnover.OF_LOTS, finished, bottle_sizes):
        foreseen.asks(reader, reach.onward)
    for reader, *cells in OF_ANY:
        foreseen.asks(reader, *cells)


OF_ANY: tuple[tuple[Any, ...], ...] = (
    (queries.house,),
    (queries.entries_of_kind, Contact),
    (queries.entries_of_kind, Party),
    (details,),
    (shown_rows,),
    (every_code,),
    (end_of,),
)
"""What is read whichever recall is looked at: each a reader with what it is given besides."""


def _to_call(
    connection: Connection,
    traced: Trace,
    lots: list[Lot],
    contacts: tuple[Entry[Contact], ...],
) -> tuple[ToCall, ...]:
    sizes = bottle_sizes(connection, [brief.seq for brief in lots])
    sizes_by_code = {brief.code: sizes[brief.seq] for brief in lots if brief.seq in sizes}
    parties = {party.name: party for party in queries.parties(connection)}
    called = {entry.draft.lot or "" for entry in contacts}
    ahead = {code: ahead_of(code, traced.edges) for code in called}
    return to_call(traced.holders, sizes_by_code, parties, contacts, ahead)


def open_recalls(connection: Connection) -> list[Recall]:
    """Return the recalls that are not closed, each of the lot that it was begun with."""
    begun: dict[object, str] = {}
    verdicts = queries.entries_of_kind(connection, Judge)
    for entry in verdicts:
        if entry.facts.verdict is Verdict.RECALL and entry.draft.lot:
            # All lots of a recall are held in one act, the one that was named first.
            begun.setdefault((entry.recorded_at, entry.draft.happened), entry.draft.lot)
    told = (*verdicts, *queries.entries_of_kind(connection, Closing)) if begun else ()
    of: dict[str | None, list[Entry]] = {}
    for about in sorted(told, key=lambda entry: entry.position):
        of.setdefault(about.draft.lot, []).append(about)
    courses = {code: _course(of[code]) for code in dict.fromkeys(begun.values())}
    still = [code for code, (verdict, closed) in courses.items() if verdict and not closed]
    return abreast(connection, *(partial(recall_on, connection, code) for code in still))


def course(connection: Connection, lot: int) -> tuple[Entry[Judge] | None, Entry[Closing] | None]:
    """Return the verdict that recalls a lot, if it still stands, and what closed the recall."""
    return _course(queries.entries_of_lot(connection, lot))


def _course(entries: Iterable[Entry]) -> tuple[Entry[Judge] | None, Entry[Closing] | None]:
    """Return it of the entries of a lot, by when they happened."""
    entries = list(entries)
    verdicts = list(entries_of(entries, Judge))
    last = verdicts[-1] if verdicts else None
    if last is None or last.facts.verdict is not Verdict.RECALL:
        return None, None
    closings = [e for e in entries_of(entries, Closing) if e.position > last.position]
    return last, closings[-1] if closings else None


def _contacts(
    connection: Connection, codes: set[str], begun: Entry | None
) -> tuple[Entry[Contact], ...]:
    if begun is None:
        return ()
    entries = queries.entries_of_kind(connection, Contact)
    made = [e for e in entries if e.draft.lot in codes and e.position > begun.position]
    return tuple(sorted(made, key=lambda entry: entry.position))
