"""Appending: the one way rows get into the book.

Guarantees: entry, rows, hash and completed tree nodes are written in the caller's transaction, in
number order without gaps. Refuses: to decide anything; rules and movements have run before.
"""

from datetime import datetime

from sqlalchemy import Connection, Table, func, select

from ledger.domain.entries import Draft, Entry, Level, Posting
from ledger.domain.entries.spine import utc
from ledger.domain.merkle import leaf_hash, new_nodes, root_of_nodes
from ledger.domain.plain import entry_text
from ledger.store.inserting import insert_row
from ledger.store.mapping import lot_codes, rows
from ledger.store.tables import ENTRY, LOT, MATERIAL_KEY, PERSON_KEY, TREE


def append(
    connection: Connection,
    draft: Draft,
    moved: tuple[tuple[Posting, ...], Level | None],
    recorded_at: datetime,
) -> Entry:
    """Add one entry to the book and return it with its number.

    Args:
        connection: A connection in a writing transaction.
        draft: What was entered.
        moved: Its postings and the level it states.
        recorded_at: The book's clock, UTC.
    """
    seq = size(connection) + 1
    entry = Entry(
        seq=seq,
        draft=draft,
        recorded_at=utc(recorded_at),
        stands_for=_stands_for(connection, draft, seq),
        postings=moved[0],
        level=moved[1],
    )
    body = entry_text(entry)
    leaf = leaf_hash(body.encode())
    ids = lot_ids(connection, lot_codes(entry))
    for table, cells in rows(
        entry, body, leaf, ids, lambda kind, key: _is_new(connection, kind, key)
    ):
        insert_row(connection, table, cells)
    _grow_tree(connection, seq - 1, leaf)
    return entry


def size(connection: Connection) -> int:
    """Return how many entries the book has."""
    return int(connection.execute(select(func.coalesce(func.max(ENTRY.c.seq), 0))).scalar_one())


def root(connection: Connection) -> bytes:
    """Return the root of the book's tree."""
    return root_of_nodes(size(connection), lambda height, place: node(connection, height, place))


def node(connection: Connection, height: int, place: int) -> bytes:
    """Return the hash of one complete node; height 0 are the leaves."""
    if height == 0:
        found = connection.execute(select(ENTRY.c.leaf).where(ENTRY.c.seq == place + 1))
    else:
        found = connection.execute(
            select(TREE.c.hash).where(TREE.c.height == height, TREE.c.place == place)
        )
    return bytes(found.scalar_one())


def lot_ids(connection: Connection, codes: frozenset[str]) -> dict[str, int]:
    """Return the numbers of lots by their codes."""
    if not codes:
        return {}
    found = connection.execute(select(LOT.c.code, LOT.c.id).where(LOT.c.code.in_(sorted(codes))))
    return {row.code: row.id for row in found}


def _stands_for(connection: Connection, draft: Draft, seq: int) -> int:
    if draft.corrects is None:
        return seq
    query = select(ENTRY.c.stands_for).where(ENTRY.c.seq == draft.corrects)
    return int(connection.execute(query).scalar_one())


def _is_new(connection: Connection, kind: str, key: str) -> bool:
    table: Table = PERSON_KEY if kind == "person" else MATERIAL_KEY
    column = table.c.initials if kind == "person" else table.c.code
    return connection.execute(select(table.c.seq).where(column == key)).first() is None


def _grow_tree(connection: Connection, index: int, leaf: bytes) -> None:
    for height, place, value in new_nodes(
        index, leaf, lambda height, place: node(connection, height, place)
    ):
        insert_row(connection, TREE, (height, place, value))
