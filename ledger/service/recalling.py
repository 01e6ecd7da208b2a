"""Recalling a lot: all that is made of it held in one act, and how far the recall is.

Guarantees: the lot and every lot made of it are recalled in one transaction or none is; a drill
reads and records nothing. Refuses: a recall without a reason, and the closing of one that is not
open.
"""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import Closing, Contact, Entry, House, Judge
from ledger.domain.entries.words import Verdict
from ledger.domain.goods import Balance, balance_of, summed
from ledger.domain.lots import Status
from ledger.domain.quantity import Measure
from ledger.errors import LedgerError, ReasonNeededError, RefusedError, together
from ledger.service.book import Book, How, Recorded
from ledger.service.dating import with_dates
from ledger.service.desk import Desk, at_desk
from ledger.service.known import known_lot
from ledger.service.recall_calls import ToCall, to_call
from ledger.service.sealing import Seal, seal_on
from ledger.service.tracing import Holder, Trace, Way, ahead_of, trace_on
from ledger.store import queries
from ledger.store.briefs import Brief
from ledger.store.engine import Connection
from ledger.store.made import bottle_sizes, finished
from ledger.store.turnover import Tick, Turnover, turnovers


class RecalledLot(Struct, frozen=True):
    """A lot of a recall, and where all of it is."""

    brief: Brief
    """What it is."""
    balance: Balance
    """Where it is, in its own measure."""


class Recall(Struct, frozen=True):
    """A recall as it stands, or as it would."""

    lot: Brief
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
    contacts: tuple[Entry, ...]
    """The calls made since it began."""
    begun: Entry | None
    """The entry that began it; None while nothing is recalled."""
    closed: Entry | None
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
        lots = (item.brief for item in self.lots)
        return tuple(lot.code for lot in lots if lot.status is not Status.RECALLED)

    @property
    def packed(self) -> tuple[RecalledLot, ...]:
        """Its lots of bottles."""
        return tuple(item for item in self.lots if item.brief.lot_type == "packed")


def recall(book: Book, how: How, tick: Tick = lambda _done, _total: None, *, lot: str) -> Recorded:
    """Recall a lot and all that is made of it; lots that are recalled already stay as they are.

    Args:
        book: The book.
        how: Who recalls it, and why.
        tick: Told how many of how many lots are held.
        lot: The lot.

    Returns:
        What was recorded of the lot itself, or of the first that was not recalled yet.

    Raises:
        ReasonNeededError: No reason is given.
        RefusedError: A lot cannot be recalled so, or all of them are; nothing is recorded.
    """
    with at_desk(book, how) as desk:
        code = desk.words.lot(lot)
        desk.words.done()
        lots = [node.brief for node in trace_on(desk.connection, code, back=False).nodes]
        waiting = [brief for brief in lots if brief.status not in (Status.RECALLED, Status.STRUCK)]
        if not waiting:
            raise RefusedError(
                f"{code} and all that is made of it are recalled already, or struck out.",
                f"pottle recall {code} shows how far the recall is.",
            )
        if not desk.reason:
            held = "1 lot, and its" if len(waiting) == 1 else f"{len(waiting)} lots, and their"
            raise ReasonNeededError(
                f"Recalling {code} holds {held} holders are to be called.",
                "Say why with --because, or try it first with --drill.",
            )
        return _held(desk, waiting, tick)[0]


def _held(desk: Desk, lots: list[Brief], tick: Tick) -> list[Recorded]:
    """Recall lots, all of them or none."""
    done: list[Recorded] = []
    errors: list[LedgerError] = []
    for place, brief in enumerate(lots, start=1):
        try:
            done.append(desk.record(Judge(Verdict.RECALL), brief.code))
        except LedgerError as error:
            errors.append(error)
        tick(place, len(lots))
    if errors:
        raise together(errors)
    return done


def close_recall(book: Book, how: How, *, lot: str, cause: str) -> Recorded:
    """Close the recall of a lot with its cause.

    Raises:
        RefusedError: The lot is not recalled, or its recall is closed.
    """
    with at_desk(book, how) as desk:
        read = desk.words
        facts, code = Closing(read.text(cause, "cause")), read.lot(lot)
        read.done()
        begun, closed = _course(desk.connection, known_lot(desk.connection, code).seq)
        if begun is None or closed:
            why = "its recall is closed already" if closed else "it is not recalled"
            raise RefusedError(
                f"There is no open recall of {code} to close: {why}.",
                f"pottle lot {code} shows what was done.",
            )
        return desk.record(facts, code)


def recall_of(book: Book, code: str) -> Recall:
    """Return a recall as it stands, or as it would, by the lot's whole code."""
    with book.reading() as connection:
        return recall_on(connection, code)


def with_days(book: Book, found: Recall) -> Recall:
    """Return a recall with the best-before dates that are reckoned for its lots."""
    with book.reading() as connection:
        known = with_dates(connection, {item.brief.lot: item.brief for item in found.lots})
    dated = tuple(replace(item, brief=known[item.brief.lot]) for item in found.lots)
    return replace(found, lots=dated)


def recall_on(connection: Connection, code: str) -> Recall:
    """Return a recall in an open transaction; as `recall_of`."""
    found = trace_on(connection, code, back=False)
    kept = [node.brief for node in found.nodes if node.way in (Way.HERE, Way.FORWARD)]
    kept = [brief for brief in kept if brief.status is not Status.STRUCK]
    lots = balances(connection, kept, found.holders)
    begun, closed = _course(connection, found.lot.lot)
    contacts = _contacts(connection, {brief.code for brief in kept}, begun)
    return Recall(
        lot=found.lot,
        lots=lots,
        balance=_total(found.lot, lots),
        measure=_measure(found.lot, lots),
        holders=found.holders,
        to_call=_to_call(connection, found, kept, contacts),
        contacts=contacts,
        begun=begun,
        closed=closed,
        trace=found,
        house=queries.house(connection),
        seal=seal_on(connection),
    )


def _to_call(
    connection: Connection,
    found: Trace,
    lots: list[Brief],
    contacts: tuple[Entry, ...],
) -> tuple[ToCall, ...]:
    sizes = bottle_sizes(connection, [brief.lot for brief in lots])
    sizes_by_code = {brief.code: sizes[brief.lot] for brief in lots if brief.lot in sizes}
    parties = {party.name: party for party in queries.parties(connection)}
    called = {entry.draft.lot or "" for entry in contacts}
    ahead = {code: ahead_of(code, found.edges) for code in called}
    return to_call(found.holders, sizes_by_code, parties, contacts, ahead)


def balances(
    connection: Connection, lots: list[Brief], holders: Iterable[Holder]
) -> tuple[RecalledLot, ...]:
    """Return lots with where all of each is, by what went out of them and came back."""
    numbers = [brief.lot for brief in lots]
    turned, out = turnovers(connection, numbers), finished(connection, numbers)
    moved: dict[str, list[Holder]] = {}
    for item in holders:
        moved.setdefault(item.lot, []).append(item)
    return tuple(
        _recalled(brief, turned[brief.lot], moved.get(brief.code, []), out.get(brief.lot))
        for brief in lots
    )


def _recalled(
    brief: Brief, turned: Turnover, moved: list[Holder], came_out: int | None
) -> RecalledLot:
    def balance(made: int) -> Balance:
        return balance_of(
            made=made,
            on_hand=brief.on_hand,
            used=turned.used,
            moves=[(item.party, item.moved_as, abs(item.amount)) for item in moved],
            gone=turned.gone,
        )

    if brief.lot_type != "made":
        return RecalledLot(brief, balance(turned.came))
    if came_out is None:
        # Not finished: there was what is there and what went out.
        came_out = -balance(0).unexplained
    return RecalledLot(brief, balance(came_out))


def _total(lot: Brief, lots: tuple[RecalledLot, ...]) -> Balance:
    packed = [item.balance for item in lots if item.brief.lot_type == "packed"]
    return summed(packed or [item.balance for item in lots if item.brief.code == lot.code])


def _measure(lot: Brief, lots: tuple[RecalledLot, ...]) -> Measure:
    is_packed = any(item.brief.lot_type == "packed" for item in lots)
    return Measure.UEACH if is_packed else lot.measure


def _course(connection: Connection, lot: int) -> tuple[Entry | None, Entry | None]:
    """Return the verdict that recalls a lot, if it still stands, and what closed the recall."""
    entries = queries.entries_of_lot(connection, lot)
    verdicts = [entry for entry in entries if isinstance(entry.draft.facts, Judge)]
    last = verdicts[-1] if verdicts else None
    if last is None or getattr(last.draft.facts, "verdict", None) is not Verdict.RECALL:
        return None, None
    later = [entry for entry in entries if entry.position > last.position]
    closings = [entry for entry in later if isinstance(entry.draft.facts, Closing)]
    return last, closings[-1] if closings else None


def _contacts(connection: Connection, codes: set[str], begun: Entry | None) -> tuple[Entry, ...]:
    if begun is None:
        return ()
    entries = queries.entries_of_kind(connection, Contact.KIND)
    made = [e for e in entries if e.draft.lot in codes and e.position > begun.position]
    return tuple(sorted(made, key=lambda entry: entry.position))
