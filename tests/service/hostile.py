"""A hostile hand in a book's file: guards taken off, something changed, guards put back.

Guarantees: what is left differs from the book in the change alone. Refuses: nothing; no check, key
or guard of the book is in force while it is at work.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from ledger.service.book import open_book
from ledger.service.verifying import Audit, Fault, verify

Value = int | str | bytes | None


@contextmanager
def hostile(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a book's file with all its guards taken off; they are put back at the end."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for pragma in (
            "synchronous = OFF",
            "foreign_keys = OFF",
            "ignore_check_constraints = ON",
            "legacy_alter_table = ON",
        ):
            connection.execute(f"PRAGMA {pragma}")
        connection.execute("BEGIN IMMEDIATE")
        guards = connection.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
        kept = guards.fetchall()
        for name, _ in kept:
            connection.execute(f'DROP TRIGGER "{name}"')
        yield connection
        for _, statement in kept:
            connection.execute(statement)
        connection.execute("COMMIT")
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def run(path: Path, *statements: str) -> None:
    """Run statements with a hostile hand."""
    with hostile(path) as connection:
        for statement in statements:
            connection.execute(statement)


def run_openly(path: Path, *statements: str) -> None:
    """Run statements that change the schema itself, and put nothing back."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for statement in ("PRAGMA foreign_keys = OFF", "PRAGMA writable_schema = ON", *statements):
            connection.execute(statement)
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def change_cell(path: Path, table: str, row: dict[str, Value], column: str, value: Value) -> None:
    """Change one cell of one row and nothing else."""
    here = " AND ".join(f'"{name}" IS :{name}' for name in row)
    with hostile(path) as connection:
        found = connection.execute(
            f'UPDATE "{table}" SET "{column}" = :new_value WHERE {here}',
            {**row, "new_value": value},
        )
        assert found.rowcount == 1


def rows_of(path: Path, table: str) -> list[dict[str, Value]]:
    """Return the rows of a table, by column."""
    with closing(sqlite3.connect(path)) as connection:
        found = connection.execute(f'SELECT * FROM "{table}"')
        names = [item[0] for item in found.description]
        return [dict(zip(names, row, strict=True)) for row in found]


def audited(path: Path) -> Audit:
    """Open the book and verify it, as a maker would."""
    book = open_book(str(path))
    try:
        return verify(book)
    finally:
        book.engine.dispose()


def found_in(path: Path) -> list[str]:
    """Return the sentences that verifying gives."""
    return [fault.what for fault in audited(path).faults]


def first_named(faults: tuple[Fault, ...]) -> int | None:
    """Return the number of the first entry that faults name."""
    return next((fault.seq for fault in faults if fault.seq is not None), None)
