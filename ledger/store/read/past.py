"""Reading the book as it was: the texts of entries up to a number.

Guarantees: every entry is returned, in force or not, by number. Refuses: to read the texts; what
they say is for others to find.
"""

from collections.abc import Collection, Iterator

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_column

CHUNK = 1000
"""How many texts are read at once."""


def texts(connection: Connection, after: int = 0) -> Iterator[tuple[int, str]]:
    """Yield the number and the canonical text of every entry after a number."""
    query = "SELECT seq, body FROM entry WHERE seq > :after ORDER BY seq LIMIT :limit"
    while True:
        rows = ask(connection, query, after=after, limit=CHUNK)
        yield from rows
        if len(rows) < CHUNK:
            return
        after, _ = rows[-1]


_WITH = (
    'SELECT seq, body FROM entry WHERE body COLLATE "C" ~ :beyond OR EXISTS ('
    "SELECT 1 FROM unnest(CAST(:words AS TEXT[])) AS sought(word) "
    'WHERE strpos(lower(body COLLATE "C"), word) > 0) ORDER BY seq'
)
_BEYOND_ASCII = r"[^\x01-\x7f]"


def texts_that_may_have(
    connection: Connection, words: Collection[str]
) -> Iterator[tuple[int, str]]:
    """Yield number and text of every entry in which one of some words may be, and of others.

    A server sends only those of which by their ASCII letters it cannot say that none is in them:
    all are one journey. In a file to look twice would take longer.

    Args:
        connection: A connection in a transaction.
        words: What is looked for, with capitals folded.
    """
    if connection.dialect.name != "postgresql":
        return texts(connection)
    plain = [word for word in words if word.isascii()]
    return iter(ask(connection, _WITH, beyond=_BEYOND_ASCII, words=plain))


def texts_about(connection: Connection, lot: int, last: int) -> tuple[tuple[int, str], ...]:
    """Return number and text of every entry about a lot up to the number `last`."""
    query = (
        "SELECT seq, body FROM entry WHERE (lot = :lot OR stands_for = :lot) AND seq <= :last "
        "ORDER BY seq"
    )
    return tuple(ask(connection, query, lot=lot, last=last))


def house_names(connection: Connection, last: int) -> tuple[str, ...]:
    """Return the names the house has had up to the entry `last`, the latest first."""
    query = "SELECT name FROM house WHERE seq <= :last ORDER BY seq DESC"
    return tuple(dict.fromkeys(ask_column(connection, query, last=last)))
