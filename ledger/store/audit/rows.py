"""Auditing the rows: does every table hold what the texts of the entries say, and nothing else?

Guarantees: recomputes leaves from the stored texts and the rows of every table from the texts.
Refuses: to trust a stored value to be of any type, and to stop at an entry that cannot be read.
"""

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache

from msgspec import Struct
from sqlalchemy import Connection, Table, text

from ledger.domain.entries import Entry
from ledger.domain.entries.plain import UNREADABLE, entry_from_plain, entry_text
from ledger.domain.evidence.merkle import HASH_SIZE, Frontier, leaf_hash
from ledger.store.audit.file import TROUBLE, is_damage
from ledger.store.engine.connections import cause
from ledger.store.engine.statements import ask
from ledger.store.form.mapping import Cells, lot_codes, rows
from ledger.store.form.tables import DETAILS, ENTRY, LOT, MATERIAL_KEY, METADATA, PERSON_KEY, TREE
from ledger.store.write.recorder import node

Stored = dict[Table, dict[Cells, Cells]]
"""Rows by their keys, table by table."""

_BODY = ENTRY.columns.keys().index("body")
_LEAF = ENTRY.columns.keys().index("leaf")


class Fault(Struct, frozen=True):
    """One thing that does not fit."""

    seq: int | None
    """Number of the entry it belongs to; None for the book as a whole."""
    what: str
    """What differs, as a whole sentence."""


class UnknownLotError(LookupError):
    """An entry speaks of a lot that no entry before it opened."""


class Reader:
    """What has been met so far while entries are read in order."""

    def __init__(self) -> None:
        """Begin before the first entry."""
        self.frontier = Frontier()
        self.nodes: dict[tuple[int, int], bytes] = {}
        self.last = 0
        """Number of the last entry there is to read."""
        self.unfit: set[int] = set()
        """Entries whose text is missing, not what was hashed or not what the book writes."""
        self._lots: dict[str, int] = {}
        self._keys: set[tuple[str, str]] = set()

    @classmethod
    def after(
        cls, frontier: Frontier, lots: dict[str, int], keys: set[tuple[str, str]]
    ) -> "Reader":
        """Begin after entries that are known to fit, with what they opened."""
        reader = cls()
        reader.frontier, reader._lots, reader._keys = frontier, lots, keys
        return reader

    def grow(self, leaf: bytes) -> None:
        """Add the next leaf to the tree."""
        for height, place, value in self.frontier.add(leaf):
            self.nodes[height, place] = value

    def pass_over(self, leaves: Sequence[bytes], lots: Mapping[str, int]) -> None:
        """Take up the next entries, of which all rows fit, by their leaves and what they opened."""
        for height, place, values in self.frontier.extend(leaves):
            self.nodes |= {(height, place + n): value for n, value in enumerate(values)}
        self._lots |= lots

    def miss(self, seq: int) -> None:
        """Pass over an entry that is not there."""
        self.unfit.add(seq)
        # Something must stand in its place, or all later leaves would stand one too early.
        self.grow(bytes(HASH_SIZE))

    def expected(self, entry: Entry, body: str, leaf: bytes) -> list[tuple[str, Cells]]:
        """Return the rows that an entry says.

        Raises:
            UnknownLotError: It speaks of a lot that no entry before it opened.
        """
        codes = lot_codes(entry)
        if unknown := codes - self._lots.keys():
            raise UnknownLotError(min(unknown))
        said = rows(entry, body, leaf, {code: self._lots[code] for code in codes}, self._is_first)
        opens = entry.draft.opens
        if opens and entry.draft.corrects is None:
            self._lots[opens.code] = entry.seq
        return said

    def _is_first(self, kind: str, key: str) -> bool:
        is_new = (kind, key) not in self._keys
        self._keys.add((kind, key))
        return is_new

    def trust(self, seq: int, stored: Stored) -> None:
        """Take what an unreadable entry opened from the tables, so that later ones can be read."""
        self._lots |= {row[1]: seq for row in stored[LOT].values() if row[0] == seq}
        for kind, table in (("person", PERSON_KEY), ("material", MATERIAL_KEY)):
            self._keys |= {(kind, key) for key, number in stored[table].values() if number == seq}


def taken_up(connection: Connection, after: int) -> Reader:
    """Return a reader that begins after the entry with that number, as the tables have it."""
    bound = {"after": after}
    lots = connection.execute(text("SELECT code, id FROM lot WHERE id <= :after"), bound)
    keys = connection.execute(
        text(
            "SELECT 'person', initials FROM person_key WHERE seq <= :after "
            "UNION ALL SELECT 'material', code FROM material_key WHERE seq <= :after"
        ),
        bound,
    )
    frontier = Frontier.of_nodes(after, lambda height, place: node(connection, height, place))
    return Reader.after(
        frontier,
        {row.code: row.id for row in lots},
        {(kind, key) for kind, key in keys},
    )


def tables() -> list[Table]:
    """Return the tables whose rows belong to an entry each."""
    return [table for table in METADATA.tables.values() if table is not TREE]


def chunk_faults(connection: Connection, reader: Reader, first: int, last: int) -> Iterator[Fault]:
    """Yield what does not fit in the rows of entries `first` to `last`."""
    try:
        said = (table for table in tables() if table is not DETAILS)
        stored = {table: _stored(connection, table, first, last) for table in said}
    except TROUBLE as error:
        if not is_damage(error):
            raise
        if first == last:
            reader.miss(first)
            yield Fault(first, f"The rows of entry {first} cannot be read: {cause(error)}.")
            return
        # Halved until the rows that cannot be read are those of one entry.
        middle = (first + last) // 2
        yield from chunk_faults(connection, reader, first, middle)
        yield from chunk_faults(connection, reader, middle + 1, last)
        return
    expected: Stored = {table: {} for table in stored}
    unread: set[int] = set()
    for seq in range(first, last + 1):
        fault = _entry_fault(reader, stored[ENTRY].get((seq,)), seq, expected)
        if fault:
            reader.trust(seq, stored)
            reader.unfit.add(seq)
            unread.add(seq)
            yield Fault(seq, fault)
        elif seq in reader.unfit:
            yield Fault(seq, f"The text of entry {seq} does not fit its hash.")
    for table in stored:
        if stored[table] != expected[table]:
            yield from _differences(table, stored[table], expected[table], unread)


def _entry_fault(reader: Reader, row: Cells | None, seq: int, expected: Stored) -> str:
    """Read one entry into the tree and the expected rows; return why that cannot be done."""
    if row is None:
        reader.miss(seq)
        return f"Entry {seq} is missing."
    body, leaf = row[_BODY], row[_LEAF]
    if not isinstance(body, str):
        reader.miss(seq)
        return f"The text of entry {seq} is no text."
    reckoned = leaf_hash(body.encode(errors="surrogateescape"))
    reader.grow(reckoned)
    if reckoned != leaf:
        reader.unfit.add(seq)
    try:
        said = _said(reader, seq, body, leaf)
    except UnknownLotError as error:
        return f"Entry {seq} speaks of the lot {error}, which no entry before it opened."
    except UNREADABLE:
        return f"The text of entry {seq} is not what the book writes."
    for name, cells in said:
        table = METADATA.tables[name]
        expected[table][_key(table)(cells)] = cells
    return ""


def _said(reader: Reader, seq: int, body: str, leaf: bytes) -> list[tuple[str, Cells]]:
    entry = entry_from_plain(json.loads(body))
    if entry.seq != seq or entry_text(entry) != body:
        raise ValueError("The text is of another entry, or of none.")
    return reader.expected(entry, body, leaf)


@cache
def _key(table: Table) -> Callable[[Cells], Cells]:
    names = table.columns.keys()
    places = [names.index(column.name) for column in table.primary_key.columns]
    return lambda row: tuple(row[place] for place in places)


@cache
def _columns(table: Table) -> str:
    return ", ".join(f'"{column.name}"' for column in table.columns)


def number_name(table: Table) -> str:
    """Return the name of the column that has the number of a row's entry."""
    return "id" if table is LOT else "seq"


def _stored(connection: Connection, table: Table, first: int, last: int) -> dict[Cells, Cells]:
    key = _key(table)
    # By the driver, past all types, for what is stored may be of another than the column's.
    cells = ask(
        connection,
        f'SELECT {_columns(table)} FROM "{table.name}" '
        f'WHERE "{number_name(table)}" BETWEEN :first AND :last',
        first=first,
        last=last,
    )
    return {key(row): row for row in cells}


def _differences(
    table: Table, stored: dict[Cells, Cells], expected: dict[Cells, Cells], unread: set[int]
) -> Iterator[Fault]:
    place = table.columns.keys().index(number_name(table))
    # As texts, for keys of a damaged book may be of types that do not compare.
    for key in sorted(stored.keys() | expected.keys(), key=str):
        have, want = stored.get(key), expected.get(key)
        seq = int((want or have or key)[place])
        if have != want and seq not in unread:
            yield Fault(seq, _difference(table, seq, have, want))


def _difference(table: Table, seq: int, have: Cells | None, want: Cells | None) -> str:
    if have is None:
        return f"Entry {seq} has lost a row of the table {table.name}."
    if want is None:
        return f"The table {table.name} has a row for entry {seq} that the entry does not say."
    columns = table.columns.keys()
    differing = [name for name, a, b in zip(columns, have, want, strict=True) if a != b]
    return f"Entry {seq} says otherwise than the table {table.name} in: {', '.join(differing)}."


def stray_faults(connection: Connection, last: int) -> Iterator[Fault]:
    """Yield the tables that have rows of entries before the first or beyond the last."""
    counts = (
        f"SELECT '{table.name}', COUNT(*), MIN({seq}) FROM \"{table.name}\" "
        f"WHERE {seq} < 1 OR {seq} > {last} OR {seq} IS NULL"
        for table in tables()
        for seq in [number_name(table)]
    )
    for name, count, least in connection.exec_driver_sql(" UNION ALL ".join(counts)):
        if count:
            first = f"numbered {least}" if isinstance(least, int) else "without a number"
            yield Fault(
                least if isinstance(least, int) else None,
                f"The table {name} has rows that belong to none of the {last} entries; the "
                f"first is {first}.",
            )
