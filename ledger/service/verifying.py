"""Verifying the book, and its seal.

Guarantees: a seal is three short lines: house, number of entries, root. Refuses: to call a book
sound of which any stored byte differs from what its entries say. Says nothing about a book that
was rebuilt whole: only a seal kept elsewhere can.
"""

from dataclasses import dataclass

from ledger.domain.entries import House
from ledger.service.book import Book
from ledger.store import queries, recorder
from ledger.store.audit import Audit, Fault, Progress, audit
from ledger.store.engine import Connection

__all__ = ["Audit", "Fault", "Seal", "seal", "verify"]


@dataclass(frozen=True, slots=True)
class Seal:
    """What a book looked like at one moment."""

    house: str
    """The maker's name."""
    entries: int
    """How many entries it had."""
    root: str
    """Root of its tree, 64 hexadecimal digits."""

    @property
    def lines(self) -> tuple[str, str, str]:
        """The three lines as they are printed.

        >>> Seal("Wren Cordials", 12, "ab" * 32).lines[1]
        'Entries 12'
        """
        return (f"House {self.house}", f"Entries {self.entries}", f"Root {self.root}")


def verify(book: Book, progress: Progress = lambda done, total: None) -> Audit:
    """Recompute everything and return what does not fit."""
    with book.reading() as connection:
        return audit(connection, progress)


def seal(book: Book) -> Seal:
    """Return the seal of the book as it is now."""
    with book.reading() as connection:
        return seal_on(connection)


def seal_on(connection: Connection) -> Seal:
    """Return the seal of the book as a transaction sees it."""
    house: House | None = queries.house(connection)
    return Seal(
        house=house.name if house else "",
        entries=recorder.size(connection),
        root=recorder.root(connection).hex(),
    )
