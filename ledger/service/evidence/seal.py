"""The seal of a book: house, number of entries, root.

Guarantees: a seal is three short lines; an older seal is proved to be of the beginning of today's
book by a consistency proof (RFC 6962). Refuses: to look at the rows; that is verifying.
"""

from collections.abc import Iterator

from ledger.domain.entries import House
from ledger.domain.evidence.merkle import consistency_path, verify_consistency
from ledger.domain.evidence.seals import Seal, same_house
from ledger.errors import StorageError
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import past, queries
from ledger.store.write import recorder

__all__ = ["Seal", "seal", "seal_faults", "seal_on"]


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


def seal_faults(connection: Connection, older: Seal) -> Iterator[str]:
    """Yield why a seal is not of the beginning of the book, a sentence each."""
    size = recorder.size(connection)
    names = past.house_names(connection, min(older.entries, size))
    name = names[0] if names else "nobody"
    is_ours = any(same_house(older.house, known) for known in names)
    try:
        fits = older.entries <= size and _continues(connection, older, size)
    except StorageError as error:
        yield error.what
        return
    if fits and not is_ours:
        yield (
            f"The seal's entries and root are those of this book, but it names the house "
            f"{older.house}, and the house was {name}."
        )
    elif not fits and not is_ours:
        yield f"The seal is of the house {older.house}, and this is the book of {name}."
    elif not fits and older.entries > size:
        yield _lost(older.entries, size)
    elif not fits:
        yield (
            f"The first {older.entries} entries of this book do not have the root of the seal: "
            "at least one of them is not as it was when the seal was made."
        )


def _lost(sealed: int, size: int) -> str:
    lost = f"entry {sealed} is" if sealed == size + 1 else f"entries {size + 1} to {sealed} are"
    return (
        f"The seal is of {sealed} entries and the book has {size}: this is an older copy, and "
        f"{lost} not in it."
    )


def _continues(connection: Connection, older: Seal, size: int) -> bool:
    path = consistency_path(
        older.entries, size, lambda height, place: recorder.node(connection, height, place)
    )
    root = recorder.root(connection)
    return verify_consistency(older.entries, size, bytes.fromhex(older.root), root, path)
