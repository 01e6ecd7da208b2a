"""Which lots an account of a period has to look at: those that moved in it, or stood before it.

Guarantees: a lot that is left out held nothing when the period began, whatever its volume is
reckoned to be, and nothing moved in it until the period was over; a lot of which that is not sure
is among those returned. Only entries in force count. Refuses: to reckon what a lot held.
"""

from collections.abc import Sequence

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_for, chunks, go_by_index
from ledger.store.read.amounts import on_hand
from ledger.store.read.lots import all_lots
from ledger.store.read.queries import IN_FORCE

# The entries are read once, whatever they moved: no index has them by when they happened.
_MOVED = f"""
    WITH late(seq, is_within) AS (
        SELECT e.seq, CASE WHEN e.happened_at < :until THEN 1 ELSE 0 END
        FROM entry e {IN_FORCE} AND e.happened_at >= :since)
    SELECT m.lot, MAX(m.is_within) FROM (
        SELECT p.source AS lot, l.is_within FROM late l CROSS JOIN posting p WHERE p.seq = l.seq
        UNION ALL
        SELECT p.target, l.is_within FROM late l CROSS JOIN posting p WHERE p.seq = l.seq
        UNION ALL
        SELECT v.lot, l.is_within FROM late l CROSS JOIN level v WHERE v.seq = l.seq) m
    WHERE m.lot IS NOT NULL GROUP BY m.lot"""
_FILLED_BEFORE = f"""
    SELECT w.lot FROM {{wanted}} w
    WHERE EXISTS (SELECT 1 FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE}
        AND p.target = w.lot AND e.happened_at < :since)"""
# Of two liquids in one jar the volume is reckoned, and solids fill something: then the amounts of
# the book may come to nothing while some is left, until the volume is measured. Bottles and caps,
# which go into what is packed, fill nothing.
_UNSURE = f"""
    SELECT w.lot FROM {{wanted}} w CROSS JOIN lot
    LEFT JOIN level v ON v.seq = (
        SELECT l.seq FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot = w.lot
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    LEFT JOIN entry ve ON ve.seq = v.seq
    WHERE lot.id = w.lot AND lot.lot_type <> 'received' AND
        (SELECT COUNT(CASE WHEN p.given > 0 THEN 1 END)
            + 2 * COUNT(CASE WHEN p.given = 0 AND lot.lot_type <> 'packed' THEN 1 END)
        FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE} AND p.target = w.lot
            AND (p.given > 0 OR p.taken > 0)
            AND (v.seq IS NULL OR e.happened_at > ve.happened_at
                OR (e.happened_at = ve.happened_at AND e.stands_for > ve.stands_for))
        ) > CASE WHEN v.seq IS NULL THEN 1 ELSE 0 END"""


def lots_of_period(connection: Connection, since: str, until: str) -> list[int]:
    """Return the numbers of the lots that an account looks at, in the order they were opened.

    Args:
        connection: A connection in a transaction.
        since: The first moment of the period, UTC instant text.
        until: The first moment after it.
    """
    go_by_index(connection)
    moved = dict(ask(connection, _MOVED, since=since, until=until))
    within = {lot for lot, is_within in moved.items() if is_within}
    later = [lot for lot in moved if lot not in within]
    unmoved = [lot for lot in all_lots(connection) if lot not in moved]
    stood = (*_filled_before(connection, later, since), *_may_hold(connection, unmoved))
    return sorted({*within, *stood})


def _filled_before(connection: Connection, lots: Sequence[int], since: str) -> list[int]:
    """Return those of the lots into which something went before a moment."""
    found = (ask_for(connection, _FILLED_BEFORE, part, since=since) for part in chunks(lots))
    return [lot for part in found for (lot,) in part]


def _may_hold(connection: Connection, lots: Sequence[int]) -> list[int]:
    """Return those of the lots that may hold something now."""
    found: list[int] = []
    for part in chunks(lots):
        held = on_hand(connection, part)
        found += [lot for lot in part if held[lot]]
        empty = [lot for lot in part if not held[lot]]
        found += [lot for (lot,) in ask_for(connection, _UNSURE, empty)]
    return found
