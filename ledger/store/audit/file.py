"""Auditing the form of the book: the list of its tables, and how a damaged one is read.

Guarantees: every table, index, view and guard that is not as the book was made with it is told.
Refuses: to read rows, and to trust that text is UTF-8.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from functools import cache, partial

from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError, OperationalError

from ledger.store.form.kept import kept_schema
from ledger.store.form.schema import schema_faults

Listed = frozenset[tuple[str, str, str, int]]
"""Type, name and table of all that a SQLite file lists, and whether it has pages of its own."""

_DECODED = partial(str, encoding="utf-8", errors="surrogateescape")
TROUBLE = (DBAPIError, UnicodeDecodeError)
"""What the driver may raise while a damaged file is read."""
_LISTED = (
    "SELECT type, name, tbl_name, rootpage <> 0 FROM sqlite_master "
    # ANALYZE makes tables of these names, which say nothing of the book; a trigger of one does.
    "WHERE NOT (type = 'table' AND name GLOB 'sqlite_stat[134]')"
)


@contextmanager
def any_text(connection: Connection) -> Iterator[None]:
    """Read text whatever its bytes are; those that are no UTF-8 become lone surrogates.

    The bytes come back with `text.encode(errors="surrogateescape")`.
    """
    driver = connection.connection.driver_connection
    if not isinstance(driver, sqlite3.Connection):
        yield
        return
    kept, driver.text_factory = driver.text_factory, _DECODED
    try:
        yield
    finally:
        driver.text_factory = kept


def is_damage(error: DBAPIError | UnicodeDecodeError) -> bool:
    """Return whether what the driver raised tells of bad bytes rather than of a bad disk."""
    return isinstance(error, UnicodeDecodeError) or (
        # To the driver a full disk and a lock are kinds of DatabaseError too.
        isinstance(error.orig, sqlite3.DatabaseError) and not isinstance(error, OperationalError)
    )


def form_faults(connection: Connection) -> Iterator[str]:
    """Yield what differs in the form of the book, a sentence each."""
    is_whole = True
    for what in schema_faults(connection):
        is_whole = False
        yield what
    if is_whole and connection.dialect.name == "sqlite":
        for kind, name, table, _ in sorted(_listed(connection) ^ _kept_list()):
            yield f"The file's list of tables differs at: {kind} {name} of {table}."


def _listed(connection: Connection) -> Listed:
    listed = connection.exec_driver_sql(_LISTED)
    return frozenset((str(a), str(b), str(c), int(d)) for a, b, c, d in listed)


@cache
def _kept_list() -> Listed:
    with closing(sqlite3.connect(":memory:")) as kept:
        # Made by this engine, so that both lists are of one way to write them.
        kept.executescript(kept_schema())
        return frozenset(kept.execute(_LISTED))
