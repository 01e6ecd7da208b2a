"""Walking the trace: from a lot to all it is made of and to all that is made of it.

Guarantees: each lot is met once, the nearer ones first; only postings in force are walked, also
those that carried an amount nobody measured, and of what left a lot only what left it after
something came; a step costs the same in a book of any size. Refuses: to follow a circle for ever;
to say whether anything was left by then, which takes a replay.
"""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_for, ask_lots, chunks, go_by_index

_WALK = """
    WITH RECURSIVE walk(lot, at, nth) AS (
        SELECT CAST(:lot AS BIGINT), {begin}
        UNION
        SELECT p.{to}, e.happened_at, e.stands_for FROM walk
        JOIN posting p ON p.{fro} = walk.lot
        JOIN entry e ON e.seq = p.seq
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.corrects IS NULL AND p.{to} IS NOT NULL
        AND (e.happened_at, e.stands_for) {ordered} (walk.at, walk.nth))"""
_EVER = "CAST('9999-12-31T23:59:59Z' AS TEXT), CAST(9007199254740991 AS BIGINT)"
_BACKWARD = {"to": "source", "fro": "target", "begin": _EVER, "ordered": "<"}
_ONWARD = {
    "to": "target",
    "fro": "source",
    "begin": "CAST('' AS TEXT), CAST(0 AS BIGINT)",
    "ordered": ">",
}
_BACK = f"{_WALK.format(**_BACKWARD)} SELECT lot FROM walk"
_FORWARD = f"{_WALK.format(**_ONWARD)} SELECT lot FROM walk"
_STEP = """
    SELECT DISTINCT p.{to} FROM {{wanted}} w
    CROSS JOIN posting p
    LEFT JOIN entry c ON c.corrects = p.seq
    WHERE p.{fro} = w.lot AND c.corrects IS NULL AND p.{to} IS NOT NULL"""
_STEP_BACK = _STEP.format(to="source", fro="target")
_STEP_FORWARD = _STEP.format(to="target", fro="source")
_SOURCES = """
    SELECT DISTINCT w.lot, p.source FROM {wanted} w
    CROSS JOIN posting p
    LEFT JOIN entry c ON c.corrects = p.seq
    WHERE p.target = w.lot AND c.corrects IS NULL AND p.source IS NOT NULL"""
_BEHIND = """
    WITH RECURSIVE walk(lot) AS (
        SELECT CAST(:lot AS BIGINT)
        UNION
        SELECT p.source FROM walk
        JOIN posting p ON p.target = walk.lot
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.corrects IS NULL AND p.source IS NOT NULL)
    SELECT lot.id, lot.code,
        (SELECT j.verdict FROM entry e JOIN judge j ON j.seq = e.seq
            LEFT JOIN entry c ON c.corrects = e.seq WHERE e.lot = walk.lot AND c.corrects IS NULL
            ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    FROM walk JOIN lot ON lot.id = walk.lot ORDER BY lot.id"""
_ALL_BEHIND = """
    WITH RECURSIVE walk(lot) AS (
        SELECT lot FROM {wanted} w
        UNION
        SELECT p.source FROM walk
        JOIN posting p ON p.target = walk.lot
        LEFT JOIN entry c ON c.corrects = p.seq
        WHERE c.corrects IS NULL AND p.source IS NOT NULL)
    SELECT lot FROM walk"""
_EDGES = """
    SELECT p.source, p.target, SUM(p.taken) AS taken FROM {wanted} w
    CROSS JOIN posting p
    LEFT JOIN entry c ON c.corrects = p.seq
    WHERE p.target = w.lot AND c.corrects IS NULL AND p.source IS NOT NULL
    GROUP BY p.source, p.target ORDER BY MIN(p.seq), p.source"""


class Edge(Struct, frozen=True):
    """What went from one lot into another, in all."""

    source: int
    """Number of the lot it left."""
    target: int
    """Number of the lot it went into."""
    taken: int
    """Amount in the source's measure; 0: carried, not measured."""


def back(connection: Connection, lot: int, deepest: int | None = None) -> list[int]:
    """Return all lots that a lot is made of, itself first, nearer ones first.

    Args:
        connection: A connection in a transaction.
        lot: Number of the lot.
        deepest: How many steps to go; None for all.
    """
    return _met(connection, lot, deepest, _BACK, _STEP_BACK)


def forward(connection: Connection, lot: int, deepest: int | None = None) -> list[int]:
    """Return all lots that are made of a lot, itself first, nearer ones first; as `back`."""
    return _met(connection, lot, deepest, _FORWARD, _STEP_FORWARD)


def all_behind(connection: Connection, lots: Sequence[int]) -> list[int]:
    """Return lots and all that went into them at any time, and so on."""
    go_by_index(connection)
    found = ask_for(connection, _ALL_BEHIND, lots)  # at once, for many are made of the same
    return list(dict.fromkeys((*lots, *(lot for (lot,) in found))))


def sources_behind(connection: Connection, lots: Sequence[int]) -> list[tuple[int, int]]:
    """Return pairs of a lot and one that went into it, of lots and all that went into them."""
    go_by_index(connection)
    pairs, met, level = list[tuple[int, int]](), set(lots), list(lots)
    while level:
        found = [
            tuple(row) for part in chunks(level) for row in ask_for(connection, _SOURCES, part)
        ]
        level = [to for to in dict.fromkeys(to for _, to in found) if to not in met]
        met.update(level)
        pairs += found
    return pairs


def _met(connection: Connection, lot: int, deepest: int | None, reach: str, step: str) -> list[int]:
    go_by_index(connection)
    if deepest is None:
        return list(dict.fromkeys(ask_lots(connection, reach, lot=lot)))
    met, level = {lot: None}, [lot]
    for _ in range(deepest):
        found = (to for part in chunks(level) for (to,) in ask_for(connection, step, part))
        level = [to for to in dict.fromkeys(found) if to not in met]
        met |= dict.fromkeys(level)
    return list(met)


def steps_from(lot: int, pairs: Iterable[tuple[int, int]]) -> dict[int, int]:
    """Return how many steps each lot is away, along pairs of a lot and one a step further.

    >>> steps_from(1, [(1, 2), (2, 3), (1, 3), (3, 4)])
    {1: 0, 2: 1, 3: 1, 4: 2}
    """
    further: dict[int, list[int]] = {}
    for near, far in pairs:
        further.setdefault(near, []).append(far)
    steps, level, away = {lot: 0}, [lot], 0
    while level:
        found = dict.fromkeys(far for near in level for far in further.get(near, ()))
        level = [far for far in found if far not in steps]
        away += 1
        steps |= dict.fromkeys(level, away)
    return steps


def edges_into(connection: Connection, lots: Sequence[int]) -> Iterator[Edge]:
    """Yield what went into lots, by target as they are given, by source as it first went in."""
    go_by_index(connection)
    for part in chunks(lots):
        into: dict[int, list[Edge]] = {lot: [] for lot in part}
        for source, target, taken in ask_for(connection, _EDGES, part):
            into[target].append(Edge(source, target, int(taken)))
        for edges in into.values():
            yield from edges


class Behind(Struct, frozen=True):
    """A lot that another is, or is made of, as far as rules ask."""

    lot: int
    """Its number."""
    code: str
    """Its code."""
    verdict: str | None
    """The last verdict on it."""


def behind(connection: Connection, lot: int) -> list[Behind]:
    """Return a lot and all it is made of, in the order they were opened."""
    return [Behind(*row) for row in ask(connection, _BEHIND, lot=lot)]
