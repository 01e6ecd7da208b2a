"""Complaints, each with what became of it.

Guarantees: reads only; of several answers to one complaint the last counts, by when it happened. A
complaint of before there were answers is open. Refuses: complaints and answers out of force.
"""

from datetime import date, timedelta

from msgspec import Struct

from ledger.domain.entries import Answer, Complaint, Entry
from ledger.domain.lots.lot import Lot
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.lots import lots_by_number


class Complained(Struct, frozen=True):
    """A complaint and what became of it."""

    entry: Entry[Complaint]
    """The complaint."""
    lot: Lot
    """The lot complained of."""
    answer: Entry[Answer] | None
    """The last answer to it."""

    @property
    def number(self) -> int:
        """Its number: that of its first entry, whatever was corrected since."""
        return self.entry.stands_for

    @property
    def is_open(self) -> bool:
        """Whether something is to be done about it still."""
        return _is_open(self.answer)

    @property
    def answer_by(self) -> date | None:
        """The day by which it is to be answered; None for one of before there was such a day."""
        days = self.entry.facts.answer_days
        made = self.entry.draft.happened.local().date()
        return None if days is None else made + timedelta(days=days)

    @property
    def brief(self) -> str:
        """What it says and who says so, in a few words."""
        facts = self.entry.facts
        return f"{facts.symptom}, from {facts.party}" if facts.party else facts.symptom


def is_closed(answer: Answer) -> bool:
    """Tell whether a complaint is closed with an answer: the customer was told, or it is said."""
    return answer.told_by is not None if answer.is_closed is None else answer.is_closed


def complaints(book: Book) -> tuple[Complained, ...]:
    """Return all complaints, by when they were made."""
    with book.reading() as connection:
        return complaints_on(connection)


def open_complaints(connection: Connection) -> list[Entry[Complaint]]:
    """Return the complaints about lots of which something is to be done still."""
    made, last = _made_and_answered(connection)
    return [e for e in made if e.draft.lot and _is_open(last.get(e.stands_for))]


def _is_open(answer: Entry[Answer] | None) -> bool:
    return answer is None or not is_closed(answer.facts)


def _made_and_answered(
    connection: Connection,
) -> tuple[list[Entry[Complaint]], dict[int, Entry[Answer]]]:
    """Return complaints by when they were made, and by their numbers what was answered last."""
    made = sorted(queries.entries_of_kind(connection, Complaint), key=lambda e: e.position)
    said = sorted(queries.entries_of_kind(connection, Answer), key=lambda e: e.position)
    return made, {entry.facts.complaint: entry for entry in said}


def complaints_on(connection: Connection) -> tuple[Complained, ...]:
    """Return all complaints in an open transaction; as `complaints`."""
    made, last = _made_and_answered(connection)
    numbers = {code: queries.lot_by_code(connection, code) for e in made if (code := e.draft.lot)}
    rows = {code: row.seq for code, row in numbers.items() if row}
    lots = lots_by_number(connection, sorted(rows.values()))
    return tuple(
        Complained(entry, lots[rows[code]], last.get(entry.stands_for))
        for entry in made
        if (code := entry.draft.lot) and code in rows
    )
