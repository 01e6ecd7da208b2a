"""Copying a book: a file page by page while others write, or as lines of text.

Guarantees: a copy is of one moment; of the lines, the first says what follows, then comes the
canonical text of every entry, so that whoever reads them can reckon the root, and at the end the
details of people and parties that were not forgotten, a line an entry.
"""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

from ledger.domain.entries.canonical import canonical_text
from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.domain.evidence.seals import Seal
from ledger.errors import StorageError
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_column
from ledger.store.form.columns import DETAIL_FIELDS
from ledger.store.read.past import texts

Progress = Callable[[int, int], None]
"""Told how much of how much is done."""
FORMAT = "pottle book 2"
"""What stands in the first line of a book in lines as its `format`."""
OLD_FORMATS = frozenset({"pottle book 1"})
"""Forms before it that are read too: without details."""
DETAILS_BEGIN = '{"details":'
"""How a line of details begins, and no entry."""
_FIELDS = {
    "sqlite": "SELECT name FROM pragma_table_info('details')",
    "postgresql": (
        "SELECT column_name FROM information_schema.columns "
        "WHERE table_schema = current_schema() AND table_name = 'details'"
    ),
}
"""Asks which columns the table of details has; none where there is no such table."""
_DETAILS = "SELECT seq, salt, {} FROM details ORDER BY seq"
PAGES = 1000
"""How many pages are copied between two words of progress."""


def copy_file(connection: Connection, to: Path, progress: Progress) -> None:
    """Copy the SQLite book of a reading transaction to a file, with others writing on.

    The copy needs no files beside it, so that it can be read from a medium that cannot be written.

    Raises:
        StorageError: The copy cannot be written.
    """
    source = connection.connection.driver_connection
    assert isinstance(source, sqlite3.Connection)
    try:
        with closing(sqlite3.connect(to)) as target:
            source.backup(
                target,
                pages=PAGES,
                progress=lambda _status, left, total: progress(total - left, total),
            )
            target.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.Error as error:
        raise StorageError(
            f"The copy could not be written: {error}.", "Choose a place with room enough."
        ) from error


def head_line(seal: Seal) -> str:
    """Return the first line of a book in lines."""
    return canonical_text(
        {"format": FORMAT, "house": seal.house, "entries": seal.entries, "root": seal.root}
    )


def text_lines(connection: Connection, seal: Seal, progress: Progress) -> Iterator[str]:
    """Yield a book's lines, without line ends.

    What it is, then the text of every entry, then the details of those that have any.
    """
    yield head_line(seal)
    for seq, body in texts(connection):
        yield body
        if seq % PAGES == 0 or seq == seal.entries:
            progress(seq, seal.entries)
    # A book of an older form, which an upgrade copies first, has none, or fewer of them.
    there = ask_column(connection, _FIELDS[connection.dialect.name])
    fields = [name for name in DETAIL_FIELDS if name in there]
    query = _DETAILS.format(", ".join(fields))
    for seq, salt, *cells in ask(connection, query) if there else ():
        told = zip(fields, cells, strict=True)
        details = {name: cell for name, cell in told if cell is not None}
        yield canonical_text({"details": details, "entry": seq, "salt": salt})


def root_of_texts(connection: Connection) -> bytes:
    """Return the root over the stored texts, whatever version the tables are of."""
    frontier = Frontier()
    for _, body in texts(connection):
        frontier.add(leaf_hash(body.encode()))
    return frontier.root()
