"""What never changes of entries, remembered for as long as a book is open.

Guarantees: only what was read of entries that stand, in a transaction that writes nothing; where
another book has come in the place of one, nothing of it is remembered, for the hash of the last of
those entries is asked for each time. Refuses: what a later entry may have otherwise, such as
whether an entry is in force.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any
from weakref import WeakKeyDictionary

from ledger.store.engine.connections import Connection, Engine, is_writing
from ledger.store.engine.statements import ask_for, ask_one, chunks

Rows = dict[int, tuple[Any, ...]]
"""Rows of entries, by the numbers of these."""


@dataclass(slots=True)
class _Memory:
    """What is remembered of a book."""

    last: int = 0
    """The number of the last entry of which anything is."""
    leaf: bytes = b""
    """Its hash."""
    rows: dict[str, Rows] = field(default_factory=dict)
    """The rows, by the statements that read them."""


_KEPT: WeakKeyDictionary[Engine, _Memory] = WeakKeyDictionary()


def lasting(connection: Connection, statement: str, entries: Sequence[int]) -> Rows:
    """Return what never changes of entries, asking for what is not remembered of it.

    Args:
        connection: A connection in a transaction.
        statement: Reads it of the numbers asked for, as `ask_for` tells: first the number of the
            entry, then what is wanted.
        entries: The numbers.
    """
    memory = _KEPT.setdefault(connection.engine, _Memory())
    if memory.last and _leaf(connection, memory.last) != memory.leaf:
        memory = _KEPT[connection.engine] = _Memory()
    kept = memory.rows.setdefault(statement, {})
    new = [number for number in entries if number not in kept]
    if new:
        rows = (row for part in chunks(new) for row in ask_for(connection, statement, part))
        found = {row[0]: tuple(row) for row in rows}
        if is_writing(connection):
            kept = kept | found
        else:
            kept.update(found)
            memory.last = max(memory.last, *found)
            memory.leaf = _leaf(connection, memory.last)
    return {number: kept[number] for number in entries}


def _leaf(connection: Connection, entry: int) -> bytes:
    leaf = ask_one(connection, "SELECT leaf FROM entry WHERE seq = :seq", seq=entry)
    return bytes(leaf or b"")
