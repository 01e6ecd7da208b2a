"""What many lots are made of, and what was done to them, at once.

Guarantees: one statement for each chunk of lots; only what is in force. Refuses: to read the whole
book for a few lots.
"""

from collections.abc import Iterable, Sequence

from ledger.domain.entries import Entry
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_for, chunks, go_by_index
from ledger.store.read import people

# UNION leaves out what was met, so that a circle in a damaged book ends.
_MADE_OF = """
    WITH RECURSIVE walk(root, lot, at, nth) AS (
        SELECT w.lot, w.lot, CAST('9999-12-31T23:59:59Z' AS TEXT), CAST(9007199254740991 AS BIGINT)
        FROM {wanted} w
        UNION
        SELECT walk.root, p.source, e.happened_at, e.stands_for
        FROM walk
        JOIN posting p ON p.target = walk.lot
        JOIN entry e ON e.seq = p.seq
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.corrects IS NULL AND p.source IS NOT NULL
        AND (e.happened_at, e.stands_for) < (walk.at, walk.nth))
    SELECT DISTINCT root, lot FROM walk WHERE lot <> root"""
_ENTRIES = """
    SELECT e.lot, e.body FROM {wanted} w
    CROSS JOIN entry e
    LEFT JOIN entry c ON c.corrects = e.seq
    WHERE e.lot = w.lot AND c.corrects IS NULL AND e.kind || '' IN (%s)
    ORDER BY e.happened_at, e.stands_for"""


def made_of(connection: Connection, lots: Iterable[int]) -> dict[int, frozenset[int]]:
    """Return for each lot the numbers of all lots it is made of, at any depth.

    What left a lot before something came to it is not made of that; whether anything of it was
    left when it did leave is not asked, that takes a replay.
    """
    wanted = list(dict.fromkeys(lots))
    sources_of: dict[int, set[int]] = {lot: set() for lot in wanted}
    for chunk in chunks(wanted):
        for root, lot in ask_for(connection, _MADE_OF, chunk):
            sources_of[root].add(lot)
    return {lot: frozenset(sources) for lot, sources in sources_of.items()}


def entries_of_lots(
    connection: Connection, lots: Iterable[int], kinds: Sequence[str]
) -> dict[int, tuple[Entry, ...]]:
    """Return the entries in force of some kinds about each lot, by when they happened."""
    go_by_index(connection)
    told = _ENTRIES % ", ".join(f"'{kind}'" for kind in kinds)
    entries_of: dict[int, list[Entry]] = {}
    for chunk in chunks(list(dict.fromkeys(lots))):
        for lot, body in ask_for(connection, told, chunk):
            entries_of.setdefault(lot, []).append(people.told(connection, body))
    return {lot: tuple(entries) for lot, entries in entries_of.items()}
