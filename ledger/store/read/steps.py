"""What was put into, taken out of, measured in and done to lots, step by step, for their replay.

Guarantees: a fixed number of statements for a chunk of lots; only entries in force count; steps
come by when they happened, then by number. Refuses: to reckon; deliveries come as they were bought.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import Any, NamedTuple

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, bindparam, text

from ledger.domain.entries.plain import read_instant
from ledger.domain.lots.steps import Act, Bought, Step
from ledger.store.engine.statements import chunks
from ledger.store.read.queries import IN_FORCE


def _statement(words: str) -> Any:  # noqa: ANN401 - a statement of SQLAlchemy
    return text(words).bindparams(bindparam("ids", expanding=True))


_LOTS = _statement("SELECT id, code, lot_type FROM lot WHERE id IN :ids")
_INTO = _statement(
    "SELECT p.seq, p.line, p.source, p.target, p.taken, p.given, p.place, e.kind, e.happened_at, "
    "e.stands_for, e.offset_min "
    f"FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE} AND p.target IN :ids"
)
_OUT = _statement(
    "SELECT p.seq, p.line, p.source, p.taken, p.place, e.kind, e.happened_at, "
    "e.stands_for, e.offset_min "
    f"FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE} AND p.source IN :ids"
)
_LEVELS = _statement(
    "SELECT l.seq, l.lot, l.amount, e.kind, e.happened_at, e.stands_for, e.offset_min "
    f"FROM level l JOIN entry e ON e.seq = l.seq {IN_FORCE} AND l.lot IN :ids"
)
_SPENT = _statement(
    "SELECT p.seq, p.line, p.source, e.lot AS target, p.taken, e.kind, e.happened_at, "
    "e.stands_for, e.offset_min "
    f"FROM entry e JOIN posting p ON p.seq = e.seq {IN_FORCE} "
    "AND e.kind = 'rinse' AND p.place = 'waste' AND e.lot IN :ids"
)
_FINISH_WORK = _statement(
    "SELECT e.seq, e.kind, e.lot, f.labour_minutes, e.happened_at, "
    "e.stands_for, e.offset_min "
    f"FROM finish f JOIN entry e ON e.seq = f.seq {IN_FORCE} "
    "AND e.lot IN :ids AND f.labour_minutes > 0"
)
_BOTTLE_WORK = _statement(
    "SELECT e.seq, e.kind, e.stands_for AS lot, b.labour_minutes, e.happened_at, "
    "e.stands_for, e.offset_min "
    f"FROM bottle b JOIN entry e ON e.seq = b.seq {IN_FORCE} "
    "AND e.stands_for IN :ids AND b.labour_minutes > 0"
)
_BOUGHT = _statement(
    "SELECT e.stands_for AS lot, p.given, r.cost_minor, r.duty_minor, r.cost_digits "
    f"FROM receipt r JOIN entry e ON e.seq = r.seq JOIN posting p ON p.seq = e.seq {IN_FORCE} "
    "AND e.stands_for IN :ids"
)


class _Place(NamedTuple):
    """Where a step stands among those of its lot."""

    at: str
    stands_for: int
    order: int
    line: int


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
    rows = _rows(connection, _SPENT, lots)
    return list(dict.fromkeys(int(row.source) for row in rows))


def steps_of(connection: Connection, ids: Sequence[int], *, of_bought: bool = False) -> Steps:
    """Return the steps of lots.

    Args:
        connection: A connection in a transaction.
        ids: The lots' numbers.
        of_bought: Whether also the steps of received lots are wanted, which may be thousands.
    """
    lots = {row.id: row for row in _rows(connection, _LOTS, ids)}
    code = {number: row.code for number, row in lots.items()}
    made = [number for number in ids if of_bought or lots[number].lot_type != "received"]
    placed: dict[int, list[tuple[_Place, Step, tuple[int, int]]]] = defaultdict(list)
    for number, place, step, key in _all_steps(connection, made, code):
        placed[number].append((place, step, key))
    for of_lot in placed.values():
        of_lot.sort(key=lambda step: step[0])
    draws = {
        key: index
        for of_lot in placed.values()
        for index, (_, step, key) in enumerate(of_lot)
        if step.act is Act.OUT
    }
    return Steps(
        {code[number]: tuple(_placed(placed[number], draws)) for number in made},
        {
            code[row.lot]: Bought(
                int(row.given), row.cost_minor, row.duty_minor or 0, row.cost_digits
            )
            for row in _rows(connection, _BOUGHT, ids)
        },
        {name: number for number, name in code.items()},
    )


def _rows(connection: Connection, statement: Any, ids: Sequence[int]) -> Iterator[Any]:  # noqa: ANN401
    for chunk in chunks(ids):
        yield from connection.execute(statement, {"ids": chunk})


_Found = tuple[int, _Place, Step, tuple[int, int]]


def _all_steps(connection: Connection, made: list[int], code: dict[int, str]) -> Iterator[_Found]:
    for row in _rows(connection, _INTO, made):
        told = _said(row) | {"source": code.get(row.source), "taken": int(row.taken)}
        step = Step(Act.INTO, int(row.given), outside=row.place or "", **told)
        yield row.target, _Place(row.happened_at, row.stands_for, 0, row.line), step, _key(row)
    for row in _rows(connection, _OUT, made):
        step = Step(Act.OUT, int(row.taken), outside=row.place or "", **_said(row))
        yield row.source, _Place(row.happened_at, row.stands_for, 0, row.line), step, _key(row)
    for row in _rows(connection, _LEVELS, made):
        place = _Place(row.happened_at, row.stands_for, 1, 0)
        # Of one entry what moves comes first, then the level that was measured, then the work.
        yield row.lot, place, Step(Act.LEVEL, int(row.amount), **_said(row)), (0, 0)
    for row in _rows(connection, _SPENT, made):
        told = _said(row) | {"source": code.get(row.source), "taken": int(row.taken)}
        place = _Place(row.happened_at, row.stands_for, 0, row.line)
        yield row.target, place, Step(Act.SPENT, 0, **told), _key(row)
    for statement in (_FINISH_WORK, _BOTTLE_WORK):
        for row in _rows(connection, statement, made):
            place = _Place(row.happened_at, row.stands_for, 2, 0)
            yield row.lot, place, Step(Act.WORK, int(row.labour_minutes), **_said(row)), (0, 0)


def _key(row: Any) -> tuple[int, int]:  # noqa: ANN401 - a row of the driver
    return (int(row.seq), int(row.line))


def _said(row: Any) -> dict[str, Any]:  # noqa: ANN401 - a row of the driver
    return {
        "entry": int(row.seq),
        "kind": str(row.kind),
        "at": str(row.happened_at),
        "clock": _on_its_clock(str(row.happened_at), int(row.offset_min)),
        "stands_for": int(row.stands_for),
    }


def _on_its_clock(at: str, offset_min: int) -> str:
    return f"{read_instant(at) + timedelta(minutes=offset_min):%Y-%m-%dT%H:%M:%S}"


def _placed(
    items: Sequence[tuple[_Place, Step, tuple[int, int]]], draws: dict[tuple[int, int], int]
) -> Iterator[Step]:
    """Yield the steps, each that goes in with the place of its draw among its source's steps."""
    for _, step, key in items:
        if step.act in (Act.INTO, Act.SPENT):
            yield replace(step, draw=draws.get(key, 0))
        else:
            yield step
