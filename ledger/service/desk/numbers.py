"""Numbers of entries, as people write them.

Guarantees: a number may have its sign (#) before it. Refuses: to guess an entry.
"""

from typing import TYPE_CHECKING

from ledger.domain.entries import Entry
from ledger.errors import InputError
from ledger.store.read import queries

if TYPE_CHECKING:
    from ledger.service.desk.act import Desk


def entry_named(desk: "Desk", text: str) -> Entry | None:
    """Return the entry that `text` numbers, or None when the book has none of that number."""
    number = desk.words.read(lambda: entry_number(text), 0)
    desk.words.done()
    return queries.entry(desk.connection, number)


def entry_number(text: str) -> int:
    """Return the number of an entry.

    Raises:
        InputError: It is no whole number.
    """
    plain = text.strip().removeprefix("#")
    # 15 digits are surely below 2**53, to which numbers of the canonical text go.
    if not (plain.isascii() and plain.isdecimal()) or len(plain) > 15:
        raise InputError(
            f'"{text}" is not the number of an entry.',
            "pottle journal lists the entries with their numbers.",
        )
    return int(plain)
