"""Amounts on hand: the last measured level and what moved since, by when it happened.

Guarantees: losses are stored nowhere: they follow from what was measured, so that a correction of
an addition leads to the right loss by itself. It agrees with the view `on_hand`, at
any moment. Refuses: to count entries out of force.
"""

from collections.abc import Sequence

from msgspec import Struct

from ledger.domain.lots.state import STAYS_IN_THE_CAKE
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_for, chunks
from ledger.store.read.queries import IN_FORCE, Moment, moment_cells

_SINCE = (
    # Of one instant the entry whose chain began first is the earlier.
    "(e.happened_at > ve.happened_at "
    "OR (e.happened_at = ve.happened_at AND e.stands_for > ve.stands_for))"
)
# Where nothing was measured all counts, whenever it was: nothing is read but the indexes.
_EVER = (
    "COALESCE((SELECT SUM(p.{moved}) FROM posting p LEFT JOIN entry c ON c.corrects = p.seq "
    "WHERE c.corrects IS NULL AND p.{end} = {lot}), 0)"
)
_SINCE_THEN = (
    "COALESCE((SELECT SUM(p.{moved}) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.{{end}} = w.lot AND {_SINCE}), 0)"
)
_IN, _OUT = {"moved": "given", "end": "target"}, {"moved": "taken", "end": "source"}
ON_HAND = f"""
    SELECT w.lot, CASE WHEN v.seq IS NULL
        THEN {_EVER.format(lot="w.lot", **_IN)} - {_EVER.format(lot="w.lot", **_OUT)}
        ELSE v.amount + {_SINCE_THEN.format(**_IN)} - {_SINCE_THEN.format(**_OUT)} END AS amount
    FROM {{wanted}} w
    LEFT JOIN level v ON v.seq = (
        SELECT l.seq FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot = w.lot
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    LEFT JOIN entry ve ON ve.seq = v.seq"""
"""What lots hold now, of those asked for as `ask_for` tells."""


_BEFORE = (
    "e.stands_for <> :skip AND (e.happened_at < m.at "
    "OR (e.happened_at = m.at AND e.stands_for < m.number))"
)
_MOVED = (
    "COALESCE((SELECT SUM(p.{moved}) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.{{end}} = :lot AND {_BEFORE} AND (v.seq IS NULL OR {_SINCE})), 0)"
)
_SORT = (  # joined so that no index is made of the few materials each time
    "SELECT mt.sort FROM entry o JOIN receipt r ON r.seq = o.seq "
    "JOIN material mt ON mt.code || '' = r.material CROSS JOIN entry me "
    "WHERE o.stands_for = s.id AND NOT EXISTS (SELECT 1 FROM entry d WHERE d.corrects = o.seq) "
    "AND me.seq = mt.seq AND NOT EXISTS (SELECT 1 FROM entry d WHERE d.corrects = me.seq) "
    "ORDER BY me.happened_at DESC, me.stands_for DESC LIMIT 1"
)
_KEPT_BACK = ", ".join(f"'{sort}'" for sort in sorted(STAYS_IN_THE_CAKE))
# Solids that dissolve add to a volume until it is measured again; what a filter keeps does not.
_SOLIDS = (
    "COALESCE((SELECT SUM(p.taken) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"JOIN lot s ON s.id = p.source AND s.measure = 'mg' {IN_FORCE} AND p.target = :lot "
    f"AND {_BEFORE} AND (v.seq IS NULL OR {_SINCE}) "
    f"AND COALESCE(({_SORT}), '') NOT IN ({_KEPT_BACK})), 0)"
)
# The short sum of all that moved leaves out no chain, so it is for where none is to be left out.
_HELD = f"""
    SELECT m.nth, CASE WHEN m.nth = 2 AND v.seq IS NULL AND :skip = 0
        THEN {_EVER.format(lot=":lot", **_IN)} - {_EVER.format(lot=":lot", **_OUT)}
        ELSE COALESCE(v.amount, 0) + {_MOVED.format(**_IN)} - {_MOVED.format(**_OUT)} END, {_SOLIDS}
    FROM ({{moments}}) m
    LEFT JOIN level v ON v.seq = (
        SELECT l.seq FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot = :lot
        AND {_BEFORE} ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    LEFT JOIN entry ve ON ve.seq = v.seq ORDER BY m.nth"""
# After every moment and every number (MAX_INTEGER) that a book can have.
_NOW = "SELECT 2 AS nth, '9999-12-31T23:59:59Z' AS at, 9007199254740991 AS number"
_THEN = "SELECT 1 AS nth, CAST(:at AS TEXT) AS at, CAST(:number AS BIGINT) AS number"
_HELD_NOW = _HELD.format(moments=_NOW)
_HELD_THEN = _HELD.format(moments=_THEN)
# An addition asks for both, so one statement has both.
HELD_THEN_AND_NOW = _HELD.format(moments=f"{_THEN} UNION ALL {_NOW}")


_POURED_INTO = f"""
    SELECT w.lot FROM {{wanted}} w
    JOIN lot ON lot.id = w.lot AND lot.lot_type = 'made'
    LEFT JOIN level v ON v.seq = (
        SELECT l.seq FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot = w.lot
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    LEFT JOIN entry ve ON ve.seq = v.seq
    WHERE EXISTS (SELECT 1 FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE}
        AND p.target = w.lot AND (p.taken > 0 OR p.given > 0)
        AND (v.seq IS NULL OR {_SINCE}))"""


class Held(Struct, frozen=True):
    """What a lot holds at a moment."""

    amount: int
    """Amount in the lot's measure."""
    solids_mg: int
    """Dissolving solids added since the volume was last measured."""


def held(connection: Connection, lot: int, moment: Moment | None = None, skip: int = 0) -> Held:
    """Return what a lot holds just before a moment (now, if None).

    Args:
        connection: A connection in a transaction.
        lot: The lot's number.
        moment: The moment.
        skip: A chain of corrections to leave out, by the number of its first entry.
    """
    if moment is None:
        return _held(connection, _HELD_NOW, lot=lot, skip=skip)[0]
    return _held(connection, _HELD_THEN, lot=lot, skip=skip, **moment_cells(moment))[0]


def held_then_and_now(
    connection: Connection, lot: int, moment: Moment, skip: int = 0
) -> tuple[Held, Held]:
    """Return what a lot holds just before a moment, and now; as `held`."""
    then, now = _held(connection, HELD_THEN_AND_NOW, lot=lot, skip=skip, **moment_cells(moment))
    return then, now


def _held(connection: Connection, statement: str, **cells: object) -> list[Held]:
    return [
        Held(int(amount), int(solids)) for _, amount, solids in ask(connection, statement, **cells)
    ]


def on_hand(connection: Connection, lots: Sequence[int]) -> dict[int, int]:
    """Return what lots hold now, in the measure of each."""
    return {lot: int(amount) for lot, amount in ask_for(connection, ON_HAND, lots)}


def poured_into(connection: Connection, lots: Sequence[int]) -> list[int]:
    """Return those of the lots made here that something was put into since they were measured."""
    return [lot for part in chunks(lots) for (lot,) in ask_for(connection, _POURED_INTO, part)]
