"""The end of the book: its last entry, as rules ask of it and as the next entry follows on it.

Guarantees: one look into the index, and one statement for all who ask.
"""

from datetime import datetime
from typing import NamedTuple

from sqlalchemy import Connection

from ledger.store.engine.statements import ask

_LAST = "SELECT seq, recorded_at, leaf FROM entry ORDER BY seq DESC LIMIT 1"


class End(NamedTuple):
    """The last entry of a book."""

    seq: int
    """Its number."""
    recorded_at: str
    """When it was recorded, UTC instant text."""
    leaf: bytes
    """The hash of its text."""


def end_of(connection: Connection) -> End | None:
    """Return the last entry; None in a book that has none."""
    rows = ask(connection, _LAST)
    return End(rows[0][0], rows[0][1], bytes(rows[0][2])) if rows else None


def last_recorded(connection: Connection) -> datetime | None:
    """Return when the last entry was recorded; None in a book that has none."""
    last = end_of(connection)
    return datetime.fromisoformat(last.recorded_at) if last else None
