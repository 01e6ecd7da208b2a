"""Appending: the one way rows get into the book.

Guarantees: entry, rows, hash and completed tree nodes are written in the caller's transaction, in
number order without gaps. Refuses: to decide anything; rules and movements have run before.
"""

from datetime import datetime

from sqlalchemy import Connection

from ledger.domain.entries import Draft, Entry, FactsT, Level, Posting
from ledger.domain.entries.plain import entry_text
from ledger.domain.entries.spine import utc
from ledger.domain.evidence.merkle import leaf_hash, new_nodes, root_of_nodes
from ledger.errors import StorageError
from ledger.store.engine.statements import ask, ask_one
from ledger.store.form.mapping import lot_codes, rows
from ledger.store.write.rows import insert_row

Moved = tuple[tuple[Posting, ...], Level | None]
"""The postings of an entry and the level it states."""
KEYS = {"person": ("person_key", "initials"), "material": ("material_key", "code")}
"""Where the first entry of each person and material is kept, by kind."""


def append(
    connection: Connection,
    draft: Draft[FactsT],
    moved: Moved,
    recorded_at: datetime,
) -> Entry[FactsT]:
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
    # Numbers have no gaps, and the greatest is one look into the index.
    return int(ask_one(connection, "SELECT COALESCE(MAX(seq), 0) FROM entry"))


def root(connection: Connection) -> bytes:
    """Return the root of the book's tree."""
    return root_of_nodes(size(connection), lambda height, place: node(connection, height, place))


def node(connection: Connection, height: int, place: int) -> bytes:
    """Return the hash of one complete node; height 0 are the leaves.

    Raises:
        StorageError: The book has lost it.
    """
    if height == 0:
        value = leaf_of(connection, place + 1)
    else:
        query = "SELECT hash FROM tree WHERE height = :height AND place = :place"
        value = ask_one(connection, query, height=height, place=place)
    if value is None:
        first, width = (place << height) + 1, 1 << height
        raise StorageError(
            f"The book has lost its hash over entries {first} to {first + width - 1}.",
            "Keep this book as it is. Run pottle verify to see what else does not fit.",
        )
    return bytes(value)


def leaf_of(connection: Connection, seq: int) -> bytes | None:
    """Return the hash of an entry's text as it is stored; None where there is no such entry."""
    leaf = ask_one(connection, "SELECT leaf FROM entry WHERE seq = :seq", seq=seq)
    return None if leaf is None else bytes(leaf)


def lot_ids(connection: Connection, codes: frozenset[str]) -> dict[str, int]:
    """Return the numbers of lots by their codes."""
    if not codes:
        return {}
    # A name for each, as SQLite takes no list for a value.
    names = [f"c{number}" for number in range(len(codes))]
    listed = ", ".join(f":{name}" for name in names)
    cells = dict(zip(names, sorted(codes), strict=True))
    return dict(ask(connection, f"SELECT code, id FROM lot WHERE code IN ({listed})", **cells))


def _stands_for(connection: Connection, draft: Draft, seq: int) -> int:
    if draft.corrects is None:
        return seq
    query = "SELECT stands_for FROM entry WHERE seq = :seq"
    return int(ask_one(connection, query, seq=draft.corrects))


def _is_new(connection: Connection, kind: str, key: str) -> bool:
    table, column = KEYS[kind]
    return not ask(connection, f"SELECT seq FROM {table} WHERE {column} = :key", key=key)


def _grow_tree(connection: Connection, index: int, leaf: bytes) -> None:
    for height, place, value in new_nodes(
        index, leaf, lambda height, place: node(connection, height, place)
    ):
        insert_row(connection, "tree", (height, place, value))
