"""Names of those outside the house: suppliers, customers, and who was told of.

Guarantees: only entries in force count; a name is found by index, and all names are found by going
from one to the next in it, however many deliveries each has. Refuses: to take one name for another.
"""

from functools import partial

from ledger.domain.entries import Party
from ledger.domain.masters.near_names import NearNames
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_column, ask_one
from ledger.store.engine.turn import turn_of
from ledger.store.read.people import STORED, code_by_name, party_codes, shown_names, told
from ledger.store.read.queries import OF_TABLE

_NEAR = "near names"
"""Under which the names of the book are known to an act."""
_NAMED_IN = (("move", "party"), ("receipt", "supplier"), ("party", "name"))
"""The tables that bring a name into the book, each with its column."""
_IS_KNOWN = " UNION ALL ".join(
    f"SELECT 1 FROM {table} t LEFT JOIN entry c ON c.corrects = t.seq "
    f"WHERE t.{column} = :name AND c.corrects IS NULL"
    for table, column in _NAMED_IN
)
_TOLD = (
    f"SELECT e.body {OF_TABLE.format(table='party')} "
    "AND (t.code = :code OR t.name IN (:name, :old)) "
    "ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1"
)
_NEXT = (
    "WITH RECURSIVE found(name) AS (SELECT min({column}) FROM {table} UNION ALL "
    "SELECT (SELECT min({column}) FROM {table} WHERE {column} > found.name) FROM found "
    "WHERE found.name IS NOT NULL) SELECT name FROM found WHERE name IS NOT NULL"
)


def party(connection: Connection, name: str) -> Party | None:
    """Return what the book last said of a party, by its name or its code."""
    shown, code = shown_names(connection), code_by_name(connection).get(name, name)
    # Of a code that stands for a name in an old text, since that was forgotten.
    old = next((word for word, by in shown.items() if by == name), name)
    body = ask_one(connection, _TOLD, code=code, name=name, old=old)
    facts = told(connection, body).facts if body else None
    return facts if isinstance(facts, Party) and name in (facts.name, facts.code) else None


def is_known(connection: Connection, name: str) -> bool:
    """Return whether an entry in force names a party so, as parties are shown now."""
    if name in code_by_name(connection):
        return True
    if name in shown_names(connection):  # a code, or a name that was forgotten
        return name in party_codes(connection)
    return is_named(connection, name)


def is_named(connection: Connection, name: str) -> bool:
    """Return whether the text of an entry in force names a party so."""
    found = ask_one(connection, f"SELECT 1 FROM ({_IS_KNOWN}) AS found LIMIT 1", name=name)
    return found is not None


def near(connection: Connection, name: str) -> tuple[str, ...]:
    """Return the names that the book has or had which one that is new may have been meant for.

    Names are only ever added, and a new one is asked about here before it is: so an act that brings
    thousands reads those of the book once.
    """
    turn = turn_of(connection)
    known: NearNames | None = turn.known.get(_NEAR) if turn else None
    if known is None:
        known = NearNames(names(connection))
        if turn:
            turn.known[_NEAR] = known
    found = known.of(name)
    known.add(name)
    return found


def names(connection: Connection) -> frozenset[str]:
    """Return all names that the book ever had, also those that were corrected, as shown now."""
    shown = shown_names(connection)
    stored = {shown.get(name, name) for name in stored_names(connection)}
    return frozenset(stored.union(shown.values()))


def stored_names(connection: Connection) -> set[str]:
    """Return all that stands for a party in any text; an act reads it once."""
    turn = turn_of(connection)
    if turn is None:
        return _stored(connection)
    if STORED not in turn.known:
        turn.known[STORED] = _stored(connection)
    found: set[str] = turn.known[STORED]
    return found


def _stored(connection: Connection) -> set[str]:
    return {name for read in EACH_NAMED for name in read(connection)}


def _named_in(connection: Connection, table: str, column: str) -> list[str]:
    return ask_column(connection, _NEXT.format(table=table, column=column))


EACH_NAMED = tuple(partial(_named_in, table=table, column=column) for table, column in _NAMED_IN)
"""Readers of all names that one table ever brought."""
