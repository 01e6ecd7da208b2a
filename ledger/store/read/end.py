"""The end of the book: its last entry, as rules ask of it and as the next entry follows on it.

Guarantees: one look into the index, and one statement for all who ask.
"""

from datetime import datetime
from typing import NamedTuple

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_once

_LAST = "SELECT seq, recorded_at, leaf FROM entry ORDER BY seq DESC LIMIT 1"

# Of the largest complete nodes that cover all leaves those above the leaves: on them, and on what
# grows meanwhile, stands every node that a later entry completes.
_EDGE = """
    WITH RECURSIVE grown(height, count) AS (
        SELECT CAST(1 AS BIGINT), CAST(:last AS BIGINT) / 2
        UNION ALL
        SELECT height + 1, count / 2 FROM grown WHERE count > 1)
    SELECT t.height, t.place, t.hash FROM grown CROSS JOIN tree t
    WHERE grown.count % 2 = 1 AND t.height = grown.height AND t.place = grown.count - 1"""
OF_LAST = "SELECT MAX(seq) FROM entry"
"""The number of the last entry."""
STANDS_FOR = "SELECT stands_for FROM entry WHERE seq = :seq"
"""The number of the first entry of a chain of corrections."""


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


def edge_of(connection: Connection, last: int) -> dict[tuple[int, int], bytes]:
    """Return the largest complete nodes that cover the book, on which later ones stand.

    Args:
        connection: A connection in a transaction.
        last: The number of the last entry.

    Returns:
        Their hashes by height and place, none of a leaf.
    """
    rows = ask_once(connection, _EDGE, last=last)
    return {(height, place): bytes(value) for height, place, value in rows}
