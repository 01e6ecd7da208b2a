"""What was put into, taken out of, measured in and done to lots, step by step, for their replay.

Guarantees: a fixed number of statements for a chunk of lots; only entries in force count; steps
come by when they happened, then by number. Refuses: to reckon; deliveries come as they were bought.
"""

from collections import defaultdict
from collections.abc import Sequence
from datetime import timedelta
from functools import lru_cache
from typing import NamedTuple

from msgspec import Struct

from ledger.domain.entries.plain import read_instant
from ledger.domain.lots.steps import Act, Bought, Step
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_for, chunks, go_by_index
from ledger.store.read.queries import IN_FORCE

_LOTS = """
    SELECT lot.id, lot.code, lot.lot_type, p.given, r.cost_minor, r.duty_minor, r.cost_digits
    FROM {wanted} w
    CROSS JOIN lot
    LEFT JOIN entry e ON e.stands_for = lot.id AND e.kind <> 'strike'
        AND NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = e.seq)
    LEFT JOIN receipt r ON r.seq = e.seq
    LEFT JOIN posting p ON p.seq = r.seq
    WHERE lot.id = w.lot"""
_SAID = "e.kind, e.happened_at, e.stands_for, e.offset_min"
# What it does, and of which lot; of one entry what moves comes first, then the level, then work.
_STEPS = f"""
    SELECT 'into', p.target, p.seq, p.line, p.source, p.given, p.taken, p.place, {_SAID}
    FROM {{wanted}} w CROSS JOIN posting p JOIN entry e ON e.seq = p.seq {IN_FORCE}
        AND p.target = w.lot
    UNION ALL
    SELECT 'out', p.source, p.seq, p.line, NULL, p.taken, 0, p.place, {_SAID}
    FROM {{wanted}} w CROSS JOIN posting p JOIN entry e ON e.seq = p.seq {IN_FORCE}
        AND p.source = w.lot
    UNION ALL
    SELECT 'level', l.lot, l.seq, 0, NULL, l.amount, 0, NULL, {_SAID}
    FROM {{wanted}} w CROSS JOIN level l JOIN entry e ON e.seq = l.seq {IN_FORCE}
        AND l.lot = w.lot
    UNION ALL
    SELECT 'spent', e.lot, p.seq, p.line, p.source, 0, p.taken, NULL, {_SAID}
    FROM {{wanted}} w CROSS JOIN entry e JOIN posting p ON p.seq = e.seq {IN_FORCE}
        AND e.lot = w.lot AND e.kind = 'rinse' AND p.place = 'waste'
    UNION ALL
    SELECT 'work', e.lot, e.seq, 0, NULL, f.labour_minutes, 0, NULL, {_SAID}
    FROM {{wanted}} w CROSS JOIN entry e JOIN finish f ON f.seq = e.seq {IN_FORCE}
        AND e.lot = w.lot AND e.kind = 'finish' AND f.labour_minutes > 0
    UNION ALL
    SELECT 'work', e.stands_for, e.seq, 0, NULL, b.labour_minutes, 0, NULL, {_SAID}
    FROM {{wanted}} w CROSS JOIN entry e JOIN bottle b ON b.seq = e.seq {IN_FORCE}
        AND e.stands_for = w.lot AND b.labour_minutes > 0"""
_SPENT = f"""
    SELECT p.source FROM {{wanted}} w CROSS JOIN entry e JOIN posting p ON p.seq = e.seq {IN_FORCE}
        AND e.lot = w.lot AND e.kind = 'rinse' AND p.place = 'waste'"""
_ACTS = {
    "into": Act.INTO,
    "out": Act.OUT,
    "level": Act.LEVEL,
    "spent": Act.SPENT,
    "work": Act.WORK,
}
_AFTER = {"level": 1, "work": 2}
"""What of one entry comes after what moves."""
_DRAWN = (Act.INTO, Act.SPENT)
"""What is drawn from another lot."""


class _Row(NamedTuple):
    """A row of the query for steps."""

    what: str
    lot: int
    seq: int
    line: int
    source: int | None
    amount: int
    taken: int
    place: str | None
    kind: str
    happened_at: str
    stands_for: int
    offset_min: int


class Steps(Struct, frozen=True):
    """The steps of a lot and of all it is made of."""

    steps: dict[str, tuple[Step, ...]]
    """Of each made, rinse or packed lot, by its code."""
    bought: dict[str, Bought]
    """Each received lot, by its code."""
    numbers: dict[str, int]
    """The numbers of all these lots, by their codes."""


def spent_on(connection: Connection, lots: Sequence[int]) -> list[int]:
    """Return the lots of which something was spent on lots, and nothing of it stays in these."""
    go_by_index(connection)
    found = (source for part in chunks(lots) for (source,) in ask_for(connection, _SPENT, part))
    return list(dict.fromkeys(found))


def steps_of(connection: Connection, ids: Sequence[int], *, of_bought: bool = False) -> Steps:
    """Return the steps of lots.

    Args:
        connection: A connection in a transaction.
        ids: The lots' numbers.
        of_bought: Whether also the steps of received lots are wanted, which may be thousands.
    """
    go_by_index(connection)
    lots = [row for part in chunks(ids) for row in ask_for(connection, _LOTS, part)]
    code = {number: name for number, name, *_ in lots}
    types = {number: lot_type for number, _, lot_type, *_ in lots}
    made = [number for number in ids if of_bought or types[number] != "received"]
    placed: dict[int, list[_Row]] = defaultdict(list)
    for row in step_rows(connection, made):
        placed[row.lot].append(row)
    for of_lot in placed.values():
        of_lot.sort(key=_place)
    draws = {
        (row.seq, row.line): index
        for of_lot in placed.values()
        for index, row in enumerate(of_lot)
        if row.what == "out"
    }
    return Steps(
        {code[number]: tuple(_step(row, code, draws) for row in placed[number]) for number in made},
        {
            name: Bought(given, cost_minor, duty_minor or 0, digits)
            for _, name, _, given, cost_minor, duty_minor, digits in lots
            if given is not None
        },
        {name: number for number, name in code.items()},
    )


def step_rows(connection: Connection, lots: Sequence[int]) -> list[_Row]:
    """Return the steps of lots as they stand in the book, in no order."""
    rows = (row for part in chunks(lots) for row in ask_for(connection, _STEPS, part))
    return list(map(_Row._make, rows))


def _place(row: _Row) -> tuple[str, int, int, int]:
    """Return where a step stands among those of its lot."""
    return row.happened_at, row.stands_for, _AFTER.get(row.what, 0), row.line


def _step(row: _Row, code: dict[int, str], draws: dict[tuple[int, int], int]) -> Step:
    """Return a step, of one that goes in with the place of its draw among its source's steps."""
    act = _ACTS[row.what]
    return Step(
        act,
        row.amount,
        source=code.get(row.source) if row.source else None,
        taken=row.taken,
        draw=draws.get((row.seq, row.line), 0) if act in _DRAWN else 0,
        entry=row.seq,
        kind=row.kind,
        at=row.happened_at,
        clock=_on_its_clock(row.happened_at, row.offset_min),
        outside=row.place or "",
        stands_for=row.stands_for,
    )


@lru_cache(maxsize=4096)
def _on_its_clock(at: str, offset_min: int) -> str:
    return (read_instant(at) + timedelta(minutes=offset_min)).isoformat()[:19]
