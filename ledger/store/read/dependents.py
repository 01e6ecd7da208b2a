"""Reading what moves, measures or speaks of a lot, and what of it was changed after an entry.

Guarantees: entries come by when they happened, then by number, and are in force; what was changed
comes in the order in which it was. Refuses: to judge whether a change matters.
"""

from collections.abc import Iterable

from msgspec import Struct

from ledger.domain.entries import Entry
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_column, ask_for
from ledger.store.read.people import told
from ledger.store.read.queries import IN_FORCE

TOUCHING = (
    "SELECT seq FROM entry WHERE lot = {lot} UNION SELECT seq FROM entry WHERE stands_for = {lot} "
    "UNION SELECT seq FROM posting WHERE source = {lot} "
    "UNION SELECT seq FROM posting WHERE target = {lot} "
    "UNION SELECT seq FROM level WHERE lot = {lot}"
)
"""The numbers of the entries that move, measure or speak of a lot, in force or not."""
_TOUCHING = (
    f"SELECT e.body FROM entry e {IN_FORCE} AND e.seq IN ({TOUCHING.format(lot=':lot')}) "
    "ORDER BY e.happened_at, e.stands_for"
)

_CHANGED = """
    SELECT c.seq, c.kind, o.seq, lot.code FROM {wanted} w
    CROSS JOIN entry o
    JOIN entry c ON c.corrects = o.seq
    JOIN entry r ON r.seq = :release
    JOIN lot ON lot.id = o.lot
    WHERE o.lot = w.lot AND c.seq > r.seq
    AND (o.happened_at, o.stands_for) < (r.happened_at, r.stands_for)
    AND o.kind IN ({kinds})
    ORDER BY c.seq"""


class Changed(Struct, frozen=True):
    """An entry that was corrected or struck after something stood on it."""

    by: int
    """Number of the entry that corrects or strikes it."""
    is_struck: bool
    """Whether it was struck."""
    entry: int
    """Its own number."""
    lot: str
    """Code of the lot that it is about."""


def changed_since(
    connection: Connection, lots: Iterable[int], release: int, kinds: Iterable[str]
) -> tuple[Changed, ...]:
    """Return what was corrected or struck after an entry, of the entries before it.

    Args:
        connection: A connection in a transaction.
        lots: Numbers of the lots whose entries count.
        release: Number of the entry after which.
        kinds: Kinds of the entries that count.
    """
    told = _CHANGED.format(wanted="{wanted}", kinds=", ".join(f"'{kind}'" for kind in kinds))
    rows = ask_for(connection, told, sorted(lots), release=release)
    return tuple(
        Changed(by, kind == "strike", entry, code) for by, kind, entry, code in sorted(rows)
    )


def entries_touching(connection: Connection, lot: int) -> tuple[Entry, ...]:
    """Return the entries in force that move, measure or speak of a lot, by its number."""
    return tuple(told(connection, body) for body in ask_column(connection, _TOUCHING, lot=lot))
