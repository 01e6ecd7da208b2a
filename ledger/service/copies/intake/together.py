"""Many acts of many verbs in one transaction: all of them are recorded, or none.

Guarantees: each act passes through its verb and all its rules, and sees those before it; a
rehearsal leaves no trace. Refuses: to go on where a verb had written before it failed, for nothing
could be told of what comes after.
"""

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field

from ledger.domain.entries import Entry
from ledger.errors import StorageError
from ledger.service.desk.book import Book
from ledger.service.desk.outcome import stands
from ledger.store.engine.acts import Foretell, foresee
from ledger.store.engine.connections import Connection


@dataclass(slots=True)
class Within(Book):
    """The book inside one writing transaction: verbs that are called with it all write there."""

    connection: Connection = field(kw_only=True)
    """The transaction."""
    has_erased: bool = field(default=False, init=False)
    """Whether the file is to be scrubbed once all is recorded."""

    def __post_init__(self) -> None:
        """Open nothing: its transaction is open already."""

    def scrub(self) -> bool:
        """Have the file scrubbed when all acts are through: it would wait for this very act."""
        self.has_erased = True
        return False

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Give the transaction."""
        yield self.connection

    @contextmanager
    def writing(self, foretell: Foretell | None = None) -> Iterator[Connection]:
        """Give the transaction; it commits when all acts are through."""
        foresee(self.connection, foretell)
        yield self.connection


class _UndoneError(Exception):
    """Says that nothing of a transaction is to stay."""


def together(book: Book, acts: Callable[[Within], Sequence[Entry] | None]) -> None:
    """Do many acts in one transaction; all of them are recorded, or nothing is.

    Args:
        book: The book.
        acts: Does them, and returns the entries that are to stay; None: nothing is to stay.

    Raises:
        StorageError: They could not be recorded, or whether they were is not known.
    """
    entries: Sequence[Entry] | None = None
    within: Within | None = None
    try:
        with book.writing() as connection:
            within = Within(book.where, book.clock, connection=connection)
            entries = acts(within)
            if entries is None:
                raise _UndoneError
    except _UndoneError:
        return
    except StorageError as error:
        # Only a commit that nobody answered for leaves open whether it was made.
        if not entries or not stands(book, entries[-1], error.what):
            raise
    book.remember([entry.seq for entry in entries or ()])
    if within and within.has_erased:
        book.scrub()
