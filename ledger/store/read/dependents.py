"""Reading everything in force that moves, measures or speaks of a lot.

Guarantees: entries come by when they happened, then by number. Refuses: entries out of force.
"""

from sqlalchemy import Connection, text

from ledger.domain.entries import Entry
from ledger.domain.entries.plain import read_entry
from ledger.store.read.queries import IN_FORCE

_TOUCHING = text(
    f"SELECT e.body FROM entry e {IN_FORCE} AND e.seq IN ("
    "SELECT seq FROM entry WHERE lot = :lot UNION SELECT seq FROM entry WHERE stands_for = :lot "
    "UNION SELECT seq FROM posting WHERE source = :lot "
    "UNION SELECT seq FROM posting WHERE target = :lot "
    "UNION SELECT seq FROM level WHERE lot = :lot) ORDER BY e.happened_at, e.stands_for"
)


def entries_touching(connection: Connection, lot: int) -> tuple[Entry, ...]:
    """Return the entries in force that move, measure or speak of a lot, by its number."""
    return tuple(map(read_entry, connection.execute(_TOUCHING, {"lot": lot}).scalars()))
