"""Amounts on hand: the last measured level and what moved since.

Guarantees: agrees with the view `on_hand`, at any moment. Refuses: to count entries out of force.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, text

from ledger.domain.lots import STAYS_IN_THE_CAKE
from ledger.store.queries import IN_FORCE, Moment, material, moment_cells
from ledger.store.wanted import ask

_BEFORE = "(e.happened_at < :at OR (e.happened_at = :at AND e.stands_for < :number))"
_AFTER = "(e.happened_at > :from_at OR (e.happened_at = :from_at AND e.stands_for > :from_number))"

_LEVEL = text(
    "SELECT l.amount, e.happened_at, e.stands_for FROM level l JOIN entry e ON e.seq = l.seq "
    f"{IN_FORCE} AND l.lot = :lot AND e.stands_for <> :skip AND {_BEFORE} "
    "ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1"
)
_MOVED = text(
    "SELECT COALESCE((SELECT SUM(p.given) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.target = :lot AND e.stands_for <> :skip AND {_BEFORE} AND {_AFTER}), 0) "
    "- COALESCE((SELECT SUM(p.taken) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.source = :lot AND e.stands_for <> :skip AND {_BEFORE} AND {_AFTER}), 0)"
)
_SOLIDS = text(
    "SELECT p.taken, r.material FROM posting p JOIN entry e ON e.seq = p.seq "
    "JOIN lot s ON s.id = p.source AND s.measure = 'mg' "
    "LEFT JOIN entry o ON o.stands_for = s.id "
    "AND NOT EXISTS (SELECT 1 FROM entry d WHERE d.corrects = o.seq) "
    "LEFT JOIN receipt r ON r.seq = o.seq "
    f"{IN_FORCE} AND p.target = :lot AND e.stands_for <> :skip AND {_BEFORE} AND {_AFTER}"
)
_SINCE = (
    "(e.happened_at > ve.happened_at "
    "OR (e.happened_at = ve.happened_at AND e.stands_for > ve.stands_for))"
)
_EVER = (
    "COALESCE((SELECT SUM(p.{moved}) FROM posting p LEFT JOIN entry c ON c.corrects = p.seq "
    "WHERE c.seq IS NULL AND p.{end} = w.lot), 0)"
)
_SINCE_THEN = (
    "COALESCE((SELECT SUM(p.{moved}) FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.{{end}} = w.lot AND {_SINCE}), 0)"
)
_IN, _OUT = {"moved": "given", "end": "target"}, {"moved": "taken", "end": "source"}
_ON_HAND = f"""
    SELECT w.lot, CASE WHEN v.seq IS NULL
        THEN {_EVER.format(**_IN)} - {_EVER.format(**_OUT)}
        ELSE v.amount + {_SINCE_THEN.format(**_IN)} - {_SINCE_THEN.format(**_OUT)} END AS amount
    FROM {{wanted}} w
    LEFT JOIN level v ON v.seq = (
        SELECT l.seq FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot = w.lot
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    LEFT JOIN entry ve ON ve.seq = v.seq"""


@dataclass(frozen=True, slots=True)
class Held:
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
    cells: dict[str, Any] = {"lot": lot, "skip": skip, **moment_cells(moment)}
    level = connection.execute(_LEVEL, cells).first()
    cells |= {
        "from_at": level.happened_at if level else "",
        "from_number": level.stands_for if level else 0,
    }
    moved = int(connection.execute(_MOVED, cells).scalar_one())
    solids = sum(
        taken
        for taken, code in connection.execute(_SOLIDS, cells).all()
        if not _stays_in_the_cake(connection, code)
    )
    return Held((level.amount if level else 0) + moved, solids)


def on_hand(connection: Connection, lots: Sequence[int]) -> dict[int, int]:
    """Return what lots hold now, in the measure of each."""
    return {lot: int(amount) for lot, amount in ask(connection, _ON_HAND, lots)}


def _stays_in_the_cake(connection: Connection, code: str | None) -> bool:
    found = material(connection, code) if code else None
    return found is not None and found.sort in STAYS_IN_THE_CAKE
