"""Damages to the rows of a book, each with the sentence that verifying tells of it.

Guarantees: of every table each cell is changed, emptied and filled, a row is lost, one is too many,
and one stands at an entry that does not say it. Refuses: the tables of entries, lots and nodes,
whose damages change what is told of others.
"""

import sqlite3
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection, UniqueConstraint

from ledger.service.desk.book import open_book
from ledger.store.audit.beside import beside
from ledger.store.audit.swift import sound_tree
from ledger.store.form.tables import METADATA
from tests.service.hostile import Value, entry_of, number, unguarded

Row = dict[str, Value]


@dataclass(frozen=True, slots=True)
class Damage:
    """One damage to one row."""

    statement: str
    row: tuple[str, str]
    """Its table, and which row of it."""
    seq: int
    """The number of its entry."""
    told: str
    """What is told of that entry."""


FIRST = "the first"
"""A table's first row, of which others are copied; what stands at another entry counts as it, for
of rows of no entry only the first is told by its number."""
ALONE = ("entry", "lot", "details", "tree")
TABLES = tuple(table for table in METADATA.tables if table not in ALONE)


def damages(table: str, rows: Sequence[Row], entries: int) -> Iterator[Damage]:
    """Yield the damages to one table.

    Args:
        table: The table.
        rows: Its rows.
        entries: How many entries the book has.
    """
    yield from _cells(table, rows)
    yield lost(table, rows)
    yield too_many(table, rows[0], entries)
    yield unsaid(table, rows)


def _cells(table: str, rows: Sequence[Row]) -> Iterator[Damage]:
    """Yield each column changed in the first row that has it, emptied and filled where it may be.

    The last row that has a cell loses it, and the first that has none gets one.
    """
    for column in METADATA.tables[table].columns:
        name = column.name
        row = next((row for row in rows if row[name] is not None), rows[0])
        yield _cell(table, rows, row, name, other(table, name, rows, row[name]))
        empty = next((row for row in rows if row[name] is None), None)
        full = next((row for row in reversed(rows) if row[name] is not None), None)
        if column.nullable and empty and empty is not row:
            yield _cell(table, rows, empty, name, other(table, name, rows, None))
        if column.nullable and full:
            yield _cell(table, rows, full, name, None)


def _cell(table: str, rows: Sequence[Row], row: Row, name: str, now: Value) -> Damage:
    seq, where = entry_of(table, row), keys_of(table, row)
    is_key = name in METADATA.tables[table].primary_key.columns
    return Damage(
        f'UPDATE "{table}" SET "{name}" = {literal(now)} WHERE {where}',
        (table, FIRST if row is rows[0] or name == "seq" else where),
        seq,
        f"Entry {seq} has lost a row of the table {table}."
        if is_key
        else f"Entry {seq} says otherwise than the table {table} in: {name}.",
    )


def lost(table: str, rows: Sequence[Row]) -> Damage:
    """Return the loss of a table's first row."""
    where, seq = keys_of(table, rows[0]), entry_of(table, rows[0])
    told = f"Entry {seq} has lost a row of the table {table}."
    return Damage(f'DELETE FROM "{table}" WHERE {where}', (table, FIRST), seq, told)


def too_many(table: str, row: Row, entries: int) -> Damage:
    """Return a copy of a row with keys that no other row has, of an entry that is not there."""
    cells = ", ".join(
        f'"{name}"' if name not in unique_columns(table)
        else f'"{name}" + 1000' if isinstance(value, int) else f"'Z' || \"{name}\""
        for name, value in row.items()
    )  # fmt: skip
    seq, statement = entry_of(table, row) + 1000, copied(table, row, cells)
    told = (
        f"The table {table} has rows that belong to none of the {entries} entries; the first is "
        f"numbered {seq}."
    )
    return Damage(statement, (table, FIRST), seq, told)


def unsaid(table: str, rows: Sequence[Row]) -> Damage:
    """Return a copy of a table's first row as one of an entry that has none there."""
    seq = "id" if table == "lot" else "seq"
    free = next(i for i in range(1, 52) if i not in {row[seq] for row in rows})
    cells = ", ".join(
        str(free) if name == seq
        else f"'Z' || \"{name}\"" if name in unique_columns(table) and name != "line"
        else f'"{name}"'
        for name in rows[0]
    )  # fmt: skip
    told = f"The table {table} has a row for entry {free} that the entry does not say."
    return Damage(copied(table, rows[0], cells), (table, FIRST), free, told)


def copied(table: str, row: Row, cells: str) -> str:
    """Return the statement that copies a row with other cells."""
    where = keys_of(table, row)
    return f'INSERT INTO "{table}" SELECT {cells} FROM "{table}" WHERE {where}'


def keys_of(table: str, row: Row) -> str:
    """Return the condition that finds a row."""
    keys = METADATA.tables[table].primary_key.columns
    return " AND ".join(f'"{key.name}" = {literal(row[key.name])}' for key in keys)


def literal(value: Value) -> str:
    """Return a cell as a statement writes it."""
    if isinstance(value, bytes):
        return f"x'{value.hex()}'"
    return "NULL" if value is None else repr(value)


def unique_columns(table: str) -> set[str]:
    """Return the columns of which no two rows may have the same."""
    known = METADATA.tables[table]
    keys = [key for key in known.constraints if isinstance(key, UniqueConstraint)]
    unique = {column.name for key in (known.primary_key, *keys) for column in key.columns}
    return unique - {"kind"}


def other(table: str, column: str, rows: Sequence[Row], value: Value) -> Value:
    """Return a value that the column may hold and that no row has there."""
    if METADATA.tables[table].columns[column].type.python_type is int:
        return 1 + max((number(row[column]) for row in rows if row[column] is not None), default=6)
    if isinstance(value, bytes):
        return bytes([value[0] ^ 1]) + value[1:]
    text = str(value or "")
    return f"{text[:-1]}{'y' if text.endswith('x') else 'x'}"


def books_of(all_damages: Sequence[Damage]) -> list[list[Damage]]:
    """Share damages out among few books, so that no row of one has two."""
    books: list[list[Damage]] = []
    met: Counter[tuple[str, str]] = Counter()
    for damage in all_damages:
        if met[damage.row] == len(books):
            books.append([])
        books[met[damage.row]].append(damage)
        met[damage.row] += 1
    return books


class Trial:
    """A book without its guards, in which nothing is left of what is tried."""

    def __init__(self, connection: Connection, entries: int) -> None:
        """Let pass what no row may say, until the end of the connection's transaction."""
        self._connection, self._entries = connection, entries
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)
        driver.execute("PRAGMA defer_foreign_keys = ON")
        driver.execute("PRAGMA ignore_check_constraints = ON")

    def is_sound(self, statement: str = "SELECT 1") -> bool:
        """Tell whether a book is swiftly found sound with a statement done, and undo that."""
        with self._connection.begin_nested() as trial:
            self._connection.exec_driver_sql(statement)
            with beside(self._connection) as second:
                tree = sound_tree(self._connection, self._entries, lambda *_: None, second)
            trial.rollback()
        return tree is not None


@contextmanager
def tried(path: Path, entries: int, table: str) -> Iterator[Trial]:
    """Open a book to try damages to a table in; it is as it was afterwards."""
    # By another connection: where one has changed the schema itself, to undo a damage lets all its
    # statements be prepared anew.
    with (
        closing(sqlite3.connect(path, isolation_level=None)) as client,
        unguarded(client, table),
        open_book(str(path)) as book,
        book.engine.connect() as connection,
    ):
        connection.execution_options(writes=True)  # so that all is read by this connection
        transaction = connection.begin()
        yield Trial(connection, entries)
        transaction.rollback()
