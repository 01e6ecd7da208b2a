"""What never changes of entries, remembered for as long as a book is open.

Guarantees: only what was read of entries that stand, in a transaction that writes nothing; where
another book has come in the place of one, nothing of it is remembered, for the last of those
entries is read again each time. Refuses: what a later entry may have otherwise, such as whether an
entry is in force.
"""

from collections.abc import Sequence
from typing import Any
from weakref import WeakKeyDictionary

from ledger.store.engine.connections import Connection, Engine, is_writing
from ledger.store.engine.statements import ask_for, chunks

Rows = dict[int, tuple[Any, ...]]
"""Rows of entries, by the numbers of these."""
_KEPT: WeakKeyDictionary[Engine, dict[str, Rows]] = WeakKeyDictionary()


def lasting(connection: Connection, statement: str, entries: Sequence[int]) -> Rows:
    """Return what never changes of entries, asking for what is not remembered of it.

    Args:
        connection: A connection in a transaction.
        statement: Reads it of the numbers asked for, as `ask_for` tells: first the number of the
            entry, then its hash, then what is wanted.
        entries: The numbers.
    """
    kept = _KEPT.setdefault(connection.engine, {}).setdefault(statement, {})
    last = max(kept, default=0)
    new = [number for number in entries if number not in kept]
    found = _asked(connection, statement, [*new, last] if last else new)
    if last and found.get(last) != kept[last]:
        kept.clear()
        found = _asked(connection, statement, entries)
    told = {**kept, **found}
    if not is_writing(connection):
        kept.update(found)
    return {number: told[number] for number in entries}


def _asked(connection: Connection, statement: str, entries: Sequence[int]) -> Rows:
    rows = (row for part in chunks(entries) for row in ask_for(connection, statement, part))
    return {row[0]: tuple(row) for row in rows}
