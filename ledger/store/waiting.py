"""Lots that wait for something.

Guarantees: entries in force only. Refuses: to judge when they are due.
"""

from sqlalchemy import Connection, text

from ledger.store.queries import IN_FORCE

_RESTING = text(
    f"SELECT DISTINCT e.lot FROM rest t JOIN entry e ON e.seq = t.seq {IN_FORCE} "
    "AND t.ended_at IS NULL AND e.stands_for NOT IN (SELECT o.began FROM rest o "
    "LEFT JOIN entry d ON d.corrects = o.seq WHERE d.seq IS NULL AND o.began IS NOT NULL) "
    "ORDER BY e.lot"
)
_RETAINED = text(
    f"SELECT DISTINCT e.lot FROM move t JOIN entry e ON e.seq = t.seq {IN_FORCE} "
    "AND t.moved_as = 'retained' ORDER BY e.lot"
)
_BY_FORMULA = text(
    f"SELECT e.stands_for FROM start s JOIN entry e ON e.seq = s.seq {IN_FORCE} "
    "AND s.formula IS NOT NULL ORDER BY e.stands_for"
)


def resting(connection: Connection) -> list[int]:
    """Return the numbers of lots of which a rest has begun and not ended."""
    return list(connection.execute(_RESTING).scalars())


def retained(connection: Connection) -> list[int]:
    """Return the numbers of lots of which samples were kept back."""
    return list(connection.execute(_RETAINED).scalars())


def by_formula(connection: Connection) -> list[int]:
    """Return the numbers of batches that follow a formula."""
    return list(connection.execute(_BY_FORMULA).scalars())
