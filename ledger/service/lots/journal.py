"""The journal: entries as they were written, each with what became of it.

Guarantees: entries that are no longer in force are among them, and say which entry took their
place; no more is read than is asked for, and what is damaged keeps nobody from the rest.
"""

from collections.abc import Iterable

from msgspec import Struct

from ledger.domain.entries import Entry, FactsT
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.desk.book import Book
from ledger.service.desk.clock import zone_on
from ledger.service.desk.times import is_repeated
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


class Said(Struct, frozen=True):
    """An entry with what became of it."""

    entry: Entry
    """The entry."""
    corrected_by: int | None
    """Number of the entry that corrects or strikes it."""
    is_repeated: bool = False
    """Whether the house's clock showed its time twice, as when summer time ends."""


def said_of(connection: Connection, found: Iterable[tuple[Entry, int | None]]) -> tuple[Said, ...]:
    """Return entries with what corrects them as they are said."""
    zone = zone_on(connection)
    return tuple(
        Said(entry, corrected_by, is_repeated(entry.draft.happened, zone))
        for entry, corrected_by in found
    )


class Journal(Struct, frozen=True):
    """Entries in number order."""

    said: tuple[Said, ...]
    """Those that can be read."""
    damaged: tuple[int, ...]
    """Numbers of those whose text cannot."""


def journal(book: Book, *, lot: str | None = None, last: int = 0, by: str | None = None) -> Journal:
    """Return the last entries of the book, or of one lot; 0: all of them."""
    with book.reading() as connection:
        number = None
        if lot:
            number = known_lot(connection, resolve_lot(connection, lot, by)).seq
        found = queries.journal(connection, last, number)
        readable = ((entry, corrected_by) for _, entry, corrected_by in found if entry)
        damaged = tuple(seq for seq, entry, _ in found if entry is None)
        return Journal(said_of(connection, readable), damaged)


def history(book: Book, seq: int) -> tuple[Said, ...]:
    """Return an entry with all that it corrects and that corrects it, oldest first."""
    with book.reading() as connection:
        entry = queries.entry(connection, seq)
        if entry is None:
            return ()
        return said_of(connection, queries.chain(connection, entry.stands_for))


def entries_of_kind(book: Book, kind: type[FactsT]) -> tuple[Entry[FactsT], ...]:
    """Return the entries in force of one kind, by number."""
    with book.reading() as connection:
        return queries.entries_of_kind(connection, kind)
