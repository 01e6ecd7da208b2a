"""Lots that wait for something.

Guarantees: entries in force only. Refuses: to judge when they are due.
"""

from sqlalchemy import Connection

from ledger.store.asking import ask_column
from ledger.store.queries import OF_TABLE

_RESTS = OF_TABLE.format(table="rest")
_MOVES = OF_TABLE.format(table="move")
_STARTS = OF_TABLE.format(table="start")
_RESTING = (
    f"SELECT DISTINCT e.lot {_RESTS} "
    "AND t.ended_at IS NULL AND e.stands_for NOT IN (SELECT o.began FROM rest o "
    "LEFT JOIN entry d ON d.corrects = o.seq WHERE d.corrects IS NULL AND o.began IS NOT NULL) "
    "ORDER BY e.lot"
)
_RETAINED = f"SELECT DISTINCT e.lot {_MOVES} AND t.moved_as = 'retained' ORDER BY e.lot"
_BY_FORMULA = f"SELECT e.stands_for {_STARTS} AND t.formula IS NOT NULL ORDER BY e.stands_for"


def resting(connection: Connection) -> list[int]:
    """Return the numbers of lots of which a rest has begun and not ended."""
    return ask_column(connection, _RESTING)


def retained(connection: Connection) -> list[int]:
    """Return the numbers of lots of which samples were kept back."""
    return ask_column(connection, _RETAINED)


def by_formula(connection: Connection) -> list[int]:
    """Return the numbers of batches that follow a formula."""
    return ask_column(connection, _BY_FORMULA)


def all_waiting(connection: Connection) -> set[int]:
    """Return the numbers of all these lots."""
    return {*resting(connection), *retained(connection), *by_formula(connection)}
