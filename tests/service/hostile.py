"""A hostile hand in a book's file: guards taken off, something changed, guards put back.

Guarantees: what is left differs from the book in the change alone. Refuses: nothing; no check, key
or guard of the book is in force while it is at work.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from ledger.domain.evidence.merkle import leaf_hash
from ledger.service.desk.book import open_book
from ledger.service.evidence.verify import Audit, Fault, verify

Value = int | str | bytes | None


@contextmanager
def hostile(path: Path, table: str = "*") -> Iterator[sqlite3.Connection]:
    """Open a book's file with the guards of some tables taken off; they are put back at the end."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for pragma in (
            "synchronous = OFF",
            "foreign_keys = OFF",
            "ignore_check_constraints = ON",
            "legacy_alter_table = ON",
        ):
            connection.execute(f"PRAGMA {pragma}")
        connection.execute("BEGIN IMMEDIATE")
        with unguarded(connection, table):
            yield connection
        connection.execute("COMMIT")
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


@contextmanager
def unguarded(connection: sqlite3.Connection, table: str = "*") -> Iterator[None]:
    """Take the guards of some tables off, and put them back at the end."""
    kept = connection.execute(
        "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND tbl_name GLOB ?", [table]
    ).fetchall()
    for name, _ in kept:
        connection.execute(f'DROP TRIGGER "{name}"')
    yield
    for _, statement in kept:
        connection.execute(statement)


def run(path: Path, *statements: str, table: str = "*") -> None:
    """Run statements with a hostile hand, on one table or on any."""
    with hostile(path, table) as connection:
        for statement in statements:
            connection.execute(statement)


def pour(path: Path, source: str, target: str) -> None:
    """Let one lot have gone into another, by the book's first entry."""
    run(
        path,
        "INSERT INTO posting (seq, line, source, target, taken, given) "
        "SELECT 1, 9, s.id, t.id, 1, 1 FROM lot s, lot t "
        f"WHERE s.code = '{source}' AND t.code = '{target}'",
        table="posting",
    )


def run_openly(path: Path, *statements: str) -> None:
    """Run statements that change the schema itself, and put nothing back."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for statement in ("PRAGMA foreign_keys = OFF", "PRAGMA writable_schema = ON", *statements):
            connection.execute(statement)
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def change_cell(path: Path, table: str, row: dict[str, Value], column: str, value: Value) -> None:
    """Change one cell of one row and nothing else."""
    here = " AND ".join(f'"{name}" IS :{name}' for name in row)
    with hostile(path, table) as connection:
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
    with open_book(str(path)) as book:
        return verify(book)


def found_in(path: Path) -> list[str]:
    """Return the sentences that verifying gives."""
    return [fault.what for fault in audited(path).faults]


def first_named(faults: tuple[Fault, ...]) -> int | None:
    """Return the number of the first entry that faults name."""
    return next((fault.seq for fault in faults if fault.seq is not None), None)


def number(value: Value) -> int:
    """Return a cell that is a number."""
    assert isinstance(value, int)
    return value


def entry_of(table: str, row: dict[str, Value]) -> int:
    """Return the number of the entry that a row belongs to, the first of many for a tree's node."""
    if table == "tree":
        return (number(row["place"]) << number(row["height"])) + 1
    return number(row["id" if table == "lot" else "seq"])


def row_of_kind(path: Path, kind: str) -> dict[str, Value]:
    """Return the spine row of the first entry of a kind."""
    return next(row for row in rows_of(path, "entry") if row["kind"] == kind)


def text_put(seq: int, body: bytes, *, hashed: bool = False) -> str:
    """Return the statement that puts another text in an entry's place, with its hash if wanted."""
    leaf = f", leaf = x'{leaf_hash(body).hex()}'" if hashed else ""
    return f"UPDATE entry SET body = CAST(x'{body.hex()}' AS TEXT){leaf} WHERE seq = {seq}"


def write_text(path: Path, seq: int, body: bytes, *, hashed: bool = False) -> None:
    """Put another text in an entry's place, with its hash if wanted."""
    run(path, text_put(seq, body, hashed=hashed), table="entry")
