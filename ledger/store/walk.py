"""Walking the trace: from a lot to all it is made of and to all that is made of it.

Guarantees: each lot is met once, at its least distance; only postings in force are walked, also
those that carried an amount nobody measured. Refuses: to follow a circle for ever.
"""

from dataclasses import dataclass

from sqlalchemy import Connection, text

_WALK = """
    WITH RECURSIVE walk(lot, depth) AS (
        SELECT CAST(:lot AS BIGINT), 0
        UNION
        SELECT p.{to}, walk.depth + 1
        FROM walk
        JOIN posting p ON p.{fro} = walk.lot
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.seq IS NULL AND p.{to} IS NOT NULL AND walk.depth < :deepest)
    SELECT lot, MIN(depth) AS depth FROM walk GROUP BY lot ORDER BY depth, lot"""
_BACK = text(_WALK.format(to="source", fro="target"))
_FORWARD = text(_WALK.format(to="target", fro="source"))
_REACH = """
    WITH RECURSIVE walk(lot) AS (
        SELECT CAST(:lot AS BIGINT)
        UNION
        SELECT p.{to} FROM walk
        JOIN posting p ON p.{fro} = walk.lot
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.seq IS NULL AND p.{to} IS NOT NULL)
    SELECT {what} FROM walk {join}"""
_REACHES = text(
    _REACH.format(to="source", fro="target", what="1", join="WHERE walk.lot = :wanted LIMIT 1")
)
_BARRED = text(
    _REACH.format(
        to="source",
        fro="target",
        what="lot.code",
        join=(
            "JOIN lot ON lot.id = walk.lot WHERE walk.lot <> :lot AND ("
            "SELECT j.verdict FROM entry e JOIN judge j ON j.seq = e.seq "
            "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.lot = walk.lot AND c.seq IS NULL "
            "ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1"
            ") IN ('hold', 'reject', 'recall') ORDER BY lot.id"
        ),
    )
)
_EDGES = text(
    "SELECT p.source, p.target, SUM(p.taken) AS taken FROM posting p "
    "LEFT JOIN entry c ON c.corrects = p.seq "
    "WHERE c.seq IS NULL AND p.target = :lot AND p.source IS NOT NULL "
    "GROUP BY p.source, p.target ORDER BY MIN(p.seq), p.source"
)
DEEPEST = 10_000
"""No walk goes further than this many steps."""


@dataclass(frozen=True, slots=True)
class Met:
    """A lot met on a walk."""

    lot: int
    """Its number."""
    depth: int
    """Least number of steps from where the walk began."""


@dataclass(frozen=True, slots=True)
class Edge:
    """What went from one lot into another, in all."""

    source: int
    """Number of the lot it left."""
    target: int
    """Number of the lot it went into."""
    taken: int
    """Amount in the source's measure; 0: carried, not measured."""


def back(connection: Connection, lot: int, deepest: int = DEEPEST) -> list[Met]:
    """Return all lots that a lot is made of, itself first, nearest first."""
    return _met(connection, _BACK, lot, deepest)


def forward(connection: Connection, lot: int, deepest: int = DEEPEST) -> list[Met]:
    """Return all lots that are made of a lot, itself first, nearest first."""
    return _met(connection, _FORWARD, lot, deepest)


def _met(connection: Connection, query: object, lot: int, deepest: int) -> list[Met]:
    found = connection.execute(query, {"lot": lot, "deepest": deepest})  # type: ignore[call-overload]
    return [Met(number, depth) for number, depth in found]


def edges_into(connection: Connection, lot: int) -> list[Edge]:
    """Return what went into one lot, by source, in the order it first went in."""
    found = connection.execute(_EDGES, {"lot": lot})
    return [Edge(source, target, int(taken)) for source, target, taken in found]


def is_made_from(connection: Connection, lot: int, wanted: int) -> bool:
    """Return whether `lot` is `wanted` or was made from it."""
    return connection.execute(_REACHES, {"lot": lot, "wanted": wanted}).first() is not None


def barred_inputs(connection: Connection, lot: int) -> tuple[str, ...]:
    """Return the codes of held, rejected or recalled lots that a lot is made of."""
    return tuple(connection.execute(_BARRED, {"lot": lot}).scalars())
