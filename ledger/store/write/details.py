"""What stands beside the entries of people and parties: put there with them, and erased.

Guarantees: a new entry of a person or a party has a commitment to its details, with a salt of its
own, and its text does not say them; what is erased leaves no trace in a file. Refuses: to erase
what no entry says is forgotten; the guards of the book do.
"""

import sqlite3
from collections.abc import Callable, Iterable
from itertools import count

# What the module `secrets` asks too; to load that takes a twentieth of a command.
from os import urandom as token_bytes
from typing import Any

from msgspec.structs import replace

from ledger.domain.entries import FactsT, Party, Person
from ledger.domain.evidence.commitments import SALT_SIZE, commitment, details_of
from ledger.errors import StorageError
from ledger.store.engine.bare import Connection, Engine
from ledger.store.engine.refusals import storage_errors
from ledger.store.engine.statements import run
from ledger.store.engine.turn import turn_of
from ledger.store.form.columns import DETAIL_FIELDS
from ledger.store.form.mapping import Cells
from ledger.store.read import parties
from ledger.store.read.people import party_codes, unlearn

_LAST = "party code"
"""Under which an act knows the number of the code that it gave last."""
Salt = Callable[[], bytes]
"""Returns a salt that nobody can guess."""


def new_salt() -> bytes:
    """Return a salt from the machine's source of chance."""
    return token_bytes(SALT_SIZE)


def committed(connection: Connection, facts: FactsT, salt: bytes) -> FactsT:
    """Return the facts of a person or a party with their commitment, and a party with its code."""
    if isinstance(facts, Party):
        code = facts.code or next_party_code(connection)
        told = commitment(salt, details_of(facts))
        return replace(facts, code=code, commitment=told)
    if isinstance(facts, Person):
        return replace(facts, commitment=commitment(salt, details_of(facts)))
    return facts


def detail_cells(seq: int, facts: Party | Person, salt: bytes) -> Cells:
    """Return the row of the details of an entry."""
    told = details_of(facts)
    return (seq, salt.hex(), *(told.get(name) for name in DETAIL_FIELDS))


def next_party_code(connection: Connection) -> str:
    """Return a code for a party that is no word that any text has for one."""
    turn, codes = turn_of(connection), party_codes(connection)
    words = parties.stored_names(connection)
    # A code that was given is never free again.
    first = turn.known.get(_LAST, 1) if turn else 1
    number = next(n for n in count(first) if f"P{n}" not in codes and f"P{n}" not in words)
    if turn:
        turn.known[_LAST] = number
    return f"P{number}"


def erase(connection: Connection, entries: Iterable[int]) -> None:
    """Take the details of entries away that an entry says are forgotten."""
    mark = "%s" if connection.dialect.name == "postgresql" else "?"
    for seq in entries:
        run(connection, f"DELETE FROM details WHERE seq = {mark}", (seq,))
    unlearn(connection)


def scrub(engine: Engine) -> bool:
    """Write a file's book anew, so that nothing of what was taken away is left in its pages.

    Returns:
        Whether it was done; not on a server, and not while others work in the file.
    """
    if engine.dialect.name != "sqlite":
        return False
    try:
        # Past the engine, which would begin a transaction, in which neither can be done.
        with storage_errors(), engine.connect() as connection:
            driver: Any = connection.connection.driver_connection
            driver.execute("VACUUM")
            is_busy, *_ = driver.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    except (sqlite3.Error, StorageError):
        return False
    return not is_busy
