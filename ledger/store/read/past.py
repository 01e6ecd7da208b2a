"""Reading the book as it was: the texts of entries up to a number.

Guarantees: every entry is returned, in force or not, by number. Refuses: to read the texts; what
they say is for others to find.
"""

from collections.abc import Iterator

from sqlalchemy import Connection, text

CHUNK = 1000
"""How many texts are read at once."""


def texts(connection: Connection, after: int = 0) -> Iterator[tuple[int, str]]:
    """Yield the number and the canonical text of every entry after a number."""
    query = text("SELECT seq, body FROM entry WHERE seq > :after ORDER BY seq LIMIT :limit")
    while True:
        rows = connection.execute(query, {"after": after, "limit": CHUNK}).all()
        yield from ((row.seq, row.body) for row in rows)
        if len(rows) < CHUNK:
            return
        after = rows[-1].seq


def texts_about(connection: Connection, lot: int, last: int) -> tuple[tuple[int, str], ...]:
    """Return number and text of every entry about a lot up to the number `last`."""
    query = text(
        "SELECT seq, body FROM entry WHERE (lot = :lot OR stands_for = :lot) AND seq <= :last "
        "ORDER BY seq"
    )
    rows = connection.execute(query, {"lot": lot, "last": last})
    return tuple((row.seq, row.body) for row in rows)


def house_names(connection: Connection, last: int) -> tuple[str, ...]:
    """Return the names the house has had up to the entry `last`, the latest first."""
    query = text("SELECT name FROM house WHERE seq <= :last ORDER BY seq DESC")
    return tuple(dict.fromkeys(connection.execute(query, {"last": last}).scalars()))
