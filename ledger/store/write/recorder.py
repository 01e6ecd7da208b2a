"""Appending: the one way rows get into the book.

Guarantees: entry, rows, hash and completed tree nodes are written in the caller's transaction, in
number order without gaps. Refuses: to decide anything; rules and movements have run before.
"""

from datetime import datetime
from typing import Any

from msgspec.structs import replace

from ledger.domain.entries import Draft, Entry, FactsT, Level, Party, Person, Posting
from ledger.domain.entries.plain import entry_text
from ledger.domain.entries.spine import utc
from ledger.domain.evidence.merkle import leaf_hash, new_nodes, root_of_nodes
from ledger.errors import StorageError
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_once, ask_one
from ledger.store.engine.turn import turn_of
from ledger.store.form.mapping import lot_codes, rows
from ledger.store.read.end import STANDS_FOR, edge_of, end_of
from ledger.store.read.people import coded, learn
from ledger.store.read.queries import lot_by_code
from ledger.store.write.details import Salt, committed, detail_cells, new_salt
from ledger.store.write.rows import insert_row

_END = "end"
_EDGE = "edge"
_BEFORE = "before"
"""Under which an act knows the number of the last entry before its own."""
Moved = tuple[tuple[Posting, ...], Level | None]
"""The postings of an entry and the level it states."""
KEYS = {"person": ("person_key", "initials"), "material": ("material_key", "code")}
"""Where the first entry of each person and material is kept, by kind."""


def append(
    connection: Connection,
    draft: Draft[FactsT],
    moved: Moved,
    recorded_at: datetime,
    salt: Salt = new_salt,
) -> Entry[FactsT]:
    """Add one entry to the book and return it with its number.

    Its text has the code of a party that the book knows, and of who a person or a party is only
    the commitment; the entry that is returned has the names.

    Args:
        connection: A connection in a writing transaction.
        draft: What was entered.
        moved: Its postings and the level it states.
        recorded_at: The book's clock, UTC.
        salt: Returns a salt for what stands beside an entry.
    """
    beside = salt() if isinstance(draft.facts, Party | Person) else b""
    facts = committed(connection, draft.facts, beside)
    known = known_of(connection)
    last, last_leaf = _end(connection, known)
    seq = last + 1
    entry = Entry(
        seq=seq,
        draft=replace(draft, facts=coded(connection, facts)),
        recorded_at=utc(recorded_at),
        stands_for=_stands_for(connection, draft, seq),
        postings=moved[0],
        level=moved[1],
    )
    body = entry_text(entry)
    leaf = leaf_hash(body.encode())
    ids = {code: _lot_id(connection, known, code) for code in lot_codes(entry)}
    made = rows(entry, body, leaf, ids, lambda kind, key: _is_new(connection, known, kind, key))
    grown = new_nodes(
        last, leaf, lambda height, place: _node(connection, known, height, place, last_leaf)
    )
    for table, cells in (*made, *(("tree", cells) for cells in grown)):
        insert_row(connection, table, cells)
    if isinstance(facts, Party | Person):
        insert_row(connection, "details", detail_cells(seq, facts, beside))
    known[_END] = seq, leaf
    known.update({("node", height, place): value for height, place, value in grown})
    if draft.opens and draft.corrects is None:
        known["lot", draft.opens.code] = seq
    learn(connection, entry.facts, is_new=draft.corrects is None)
    return replace(entry, draft=replace(draft, facts=facts))


def known_of(connection: Connection) -> dict[object, Any]:
    """Return what the act of a connection knows of the book's end; nothing where none goes on."""
    turn = turn_of(connection)
    return turn.known if turn else {}


def _end(connection: Connection, known: dict[object, Any]) -> tuple[int, bytes | None]:
    """Return the number of the book's last entry and its leaf."""
    if _END not in known:
        last = end_of(connection)
        known[_END] = (last.seq, last.leaf) if last else (0, None)
        known[_BEFORE] = known[_END][0]
    found: tuple[int, bytes | None] = known[_END]
    return found


def _lot_id(connection: Connection, known: dict[object, Any], code: str) -> int:
    if ("lot", code) not in known:
        row = lot_by_code(connection, code)
        known["lot", code] = row.seq if row else None
    return int(known["lot", code])


def _node(
    connection: Connection,
    known: dict[object, Any],
    height: int,
    place: int,
    leaf: bytes | None,
) -> bytes:
    """Return a complete node at the book's right edge; of the leaves that is the last."""
    if height == 0 and leaf is not None:
        return leaf
    if _EDGE not in known:
        known[_EDGE] = True
        # As its look foretold it; what was completed since is known.
        edge = edge_of(connection, known[_BEFORE])
        known.update({("node", *where): value for where, value in edge.items()})
    found = known.get(("node", height, place))
    return node(connection, height, place) if found is None else bytes(found)


def size(connection: Connection) -> int:
    """Return how many entries the book has."""
    known = known_of(connection)  # of what an act wrote itself it knows the end
    if _END in known:
        return int(known[_END][0])
    last = end_of(connection)  # numbers have no gaps
    return last.seq if last else 0


def root(connection: Connection) -> bytes:
    """Return the root of the book's tree."""
    last = end_of(connection)
    number = last.seq if last else 0
    edge = edge_of(connection, number)
    if last:
        edge[0, number - 1] = last.leaf
    return root_of_nodes(
        number, lambda height, place: edge.get((height, place)) or node(connection, height, place)
    )


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


def _stands_for(connection: Connection, draft: Draft, seq: int) -> int:
    if draft.corrects is None:
        return seq
    return int(ask_once(connection, STANDS_FOR, seq=draft.corrects)[0][0])


def _is_new(connection: Connection, known: dict[object, Any], kind: str, key: str) -> bool:
    if (kind, key) in known:
        return False
    known[kind, key] = True
    return first_of(connection, kind, key) is None


def first_of(connection: Connection, kind: str, key: str) -> int | None:
    """Return the number of the first entry of a person or a material, or None."""
    table, column = KEYS[kind]
    seq: int | None = ask_one(connection, f"SELECT seq FROM {table} WHERE {column} = :key", key=key)
    return seq
