"""Auditing: is every row of the book what its entries say, and every entry what its hash says?

Guarantees: recomputes leaves from the stored text, the rows of every table from the text, and the
tree from the leaves; compares tables, views and guards with those the book was made with. Refuses:
to trust any of them.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Table, func, select, text

from ledger.domain.entries import Entry
from ledger.domain.merkle import Frontier, leaf_hash
from ledger.domain.plain import read_entry
from ledger.errors import LedgerError
from ledger.store.engine import SCHEMA_VERSION
from ledger.store.mapping import Row, rows
from ledger.store.schema import schema_faults
from ledger.store.tables import ENTRY, LOT, METADATA, TREE

CHUNK = 500
"""How many entries are compared at once."""
MOST_FAULTS = 50
"""After so many faults the audit stops looking for more."""

Key = tuple[Any, ...]
Progress = Callable[[int, int], None]
"""Told how many entries of how many are done."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that does not fit."""

    seq: int | None
    """Number of the entry it belongs to; None for the book as a whole."""
    what: str
    """What differs, as a whole sentence."""


@dataclass(frozen=True, slots=True)
class Audit:
    """What an audit found."""

    entries: int
    """How many entries the book has."""
    root: bytes
    """Root of the tree over the stored text."""
    faults: tuple[Fault, ...]
    """What does not fit, in entry order; empty when all does."""


class _Reader:
    """What has been met so far while entries are read in order."""

    def __init__(self) -> None:
        self.lots: dict[str, int] = {}
        self.keys: set[tuple[str, str]] = set()
        self.frontier = Frontier()
        self.nodes: dict[Key, bytes] = {}

    def expected(self, entry: Entry, body: str, leaf: bytes) -> list[tuple[Table, Row]]:
        def is_first(kind: str, key: str) -> bool:
            is_new = (kind, key) not in self.keys
            self.keys.add((kind, key))
            return is_new

        found = rows(entry, body, leaf, self.lots, is_first)
        opens = entry.draft.opens
        if opens and entry.draft.corrects is None:
            self.lots[opens.code] = entry.seq
        return found


def audit(connection: Connection, progress: Progress = lambda done, total: None) -> Audit:
    """Compare the whole book with what its entries say."""
    total = int(connection.execute(select(func.count()).select_from(ENTRY)).scalar_one())
    reader = _Reader()
    faults: list[Fault] = []
    faults += (Fault(None, what) for what in _engine_faults(connection))
    faults += (Fault(None, what) for what in schema_faults(connection))
    last = 0
    for start in range(0, total, CHUNK):
        faults += _chunk_faults(connection, reader, start + 1, min(start + CHUNK, total))
        last = min(start + CHUNK, total)
        progress(last, total)
        if len(faults) > MOST_FAULTS:
            break
    faults += _outside(connection, total)
    faults += _tree_faults(connection, reader) if last == total else ()
    return Audit(total, reader.frontier.root(), tuple(faults[:MOST_FAULTS]))


def _engine_faults(connection: Connection) -> Iterator[str]:
    version = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
    if list(version) != [f"{SCHEMA_VERSION:04d}"]:
        yield f"The book's version is written as {list(version)}, not {SCHEMA_VERSION:04d}."
    if connection.dialect.name != "sqlite":
        return
    for line in connection.exec_driver_sql("PRAGMA integrity_check(5)").scalars():
        if line != "ok":
            yield f"The file is damaged: {line}."
    for row in connection.exec_driver_sql("PRAGMA foreign_key_check"):
        yield f"A row of the table {row[0]} refers to a row of {row[2]} that is not there."


def _chunk_faults(
    connection: Connection, reader: _Reader, first: int, last: int
) -> Iterator[Fault]:
    stored = {table: _stored(connection, table, first, last) for table in _tables()}
    spine = stored[ENTRY]
    expected: dict[Table, dict[Key, Row]] = {table: {} for table in stored}
    unread: set[int] = set()
    for seq in range(first, last + 1):
        row = spine.get((seq,))
        if row is None:
            yield Fault(seq, f"Entry {seq} is missing.")
            unread.add(seq)
            continue
        leaf = leaf_hash(row["body"].encode())
        reader.nodes |= {(h, p): value for h, p, value in reader.frontier.add(leaf) if h}
        if leaf != bytes(row["leaf"]):
            yield Fault(seq, f"The text of entry {seq} does not fit its hash.")
        entry = _read(row["body"])
        if entry is None or entry.seq != seq:
            yield Fault(seq, f"The text of entry {seq} is not what the book writes.")
            unread.add(seq)
            continue
        try:
            for table, cells in reader.expected(entry, row["body"], leaf):
                expected[table][_key(table, cells)] = cells
        except KeyError as error:
            yield Fault(seq, f"Entry {seq} speaks of the lot {error}, which no entry opened.")
            unread.add(seq)
    yield from _differences(stored, expected, unread)


def _read(body: str) -> Entry | None:
    try:
        return read_entry(body)
    except (LedgerError, KeyError, TypeError, ValueError):
        return None


def _differences(
    stored: dict[Table, dict[Key, Row]], expected: dict[Table, dict[Key, Row]], unread: set[int]
) -> Iterator[Fault]:
    found: list[Fault] = []
    for table in stored:
        for key in stored[table].keys() | expected[table].keys():
            have, want = stored[table].get(key), expected[table].get(key)
            seq = _seq(table, want or have or {})
            if have == want or seq in unread:
                continue
            found.append(Fault(seq, _difference(table, seq, have, want)))
    yield from sorted(found, key=lambda fault: (fault.seq or 0, fault.what))


def _difference(table: Table, seq: int, have: Row | None, want: Row | None) -> str:
    if have is None:
        return f"Entry {seq} has lost a row of the table {table.name}."
    if want is None:
        return f"The table {table.name} has a row for entry {seq} that the entry does not say."
    columns = [name for name in want if have.get(name) != want[name]]
    return f"Entry {seq} says otherwise than the table {table.name} in: {', '.join(columns)}."


def _tables() -> list[Table]:
    return [table for table in METADATA.tables.values() if table is not TREE]


def _seq_column(table: Table) -> Any:  # noqa: ANN401 - a column of any type
    return table.c.id if table is LOT else table.c.seq


def _seq(table: Table, row: Row) -> int:
    return int(row["id" if table is LOT else "seq"])


def _key(table: Table, row: Row) -> Key:
    return tuple(row[column.name] for column in table.primary_key.columns)


def _stored(connection: Connection, table: Table, first: int, last: int) -> dict[Key, Row]:
    query = select(table).where(_seq_column(table).between(first, last))
    found = (dict(row) for row in connection.execute(query).mappings())
    return {_key(table, row): _plain(row) for row in found}


def _plain(row: Row) -> Row:
    return {
        name: bytes(value) if isinstance(value, memoryview) else value
        for name, value in row.items()
    }


def _outside(connection: Connection, total: int) -> Iterator[Fault]:
    for table in _tables():
        column = _seq_column(table)
        query = select(func.count()).select_from(table).where(~column.between(1, total))
        if strays := connection.execute(query).scalar_one():
            yield Fault(
                None,
                f"The table {table.name} has {strays} rows numbered beyond the {total} entries.",
            )


def _tree_faults(connection: Connection, reader: _Reader) -> Iterator[Fault]:
    query = select(TREE.c.height, TREE.c.place, TREE.c.hash)
    stored = {(h, p): bytes(value) for h, p, value in connection.execute(query)}
    for height, place in sorted(stored.keys() | reader.nodes.keys()):
        if stored.get((height, place)) != reader.nodes.get((height, place)):
            first = (place << height) + 1
            yield Fault(
                first,
                f"The tree's node over entries {first} to {first + (1 << height) - 1} does not "
                "fit them.",
            )
