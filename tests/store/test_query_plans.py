"""The statements that run at every entry and every trace find their rows by index."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

import pytest
from sqlalchemy import Connection, event

from ledger.store import amounts, dating, queries, walk
from ledger.store.made import bottle_sizes, finished
from ledger.store.queries import Moment
from ledger.store.reach import entries_of_lots, made_of
from ledger.store.turnover import turnovers
from tests.keeper import Keeper

Asked = tuple[str, object]
"""A statement with its parameters, as the driver got them."""
NOON = Moment(datetime(2026, 3, 5, 12, tzinfo=UTC), 40)

HOT: dict[str, Callable[[Connection, int], object]] = {
    "walk back": walk.back,
    "walk forward": walk.forward,
    "what went in": walk.edges_into,
    "made from": lambda connection, lot: walk.is_made_from(connection, lot, lot - 1),
    "dates": lambda connection, lot: dating.dated(connection, [lot]),
    "barred inputs": walk.barred_inputs,
    "held now": amounts.held,
    "held then": lambda connection, lot: amounts.held(connection, lot, NOON, skip=20),
    "entries of a lot": queries.entries_of_lot,
    "all entries of a lot": queries.all_entries_of_lot,
    "moves of a lot": queries.moves_of_lot,
    "entries about a lot": queries.entries_about,
    "what corrects an entry": queries.corrected_by,
    "turnover": lambda connection, lot: turnovers(connection, [lot, lot - 1]),
    "what came out": lambda connection, lot: finished(connection, [lot, lot - 1]),
    "bottle sizes": lambda connection, lot: bottle_sizes(connection, [lot, lot - 1]),
    "what many lots are made of": lambda connection, lot: made_of(connection, [lot, lot - 1]),
    "entries of many lots": lambda connection, lot: entries_of_lots(
        connection, [lot, lot - 1], ("add", "rest")
    ),
}


@contextmanager
def listening(connection: Connection) -> Iterator[list[Asked]]:
    asked: list[Asked] = []

    def hear(_c: object, _cursor: object, statement: str, cells: object, *_: object) -> None:
        asked.append((statement, cells))

    event.listen(connection, "before_cursor_execute", hear)
    try:
        yield asked
    finally:
        event.remove(connection, "before_cursor_execute", hear)


def plan_lines(connection: Connection, asked: Asked) -> list[str]:
    statement, cells = asked
    found = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", cells)  # type: ignore[arg-type]
    return [row.detail for row in found]


def is_slow(line: str) -> bool:
    """Tell whether a step of a plan reads a whole table, or makes an index to use it once."""
    reads_all = line.startswith("SCAN ") and line.split()[1] in {
        "e", "c", "p", "l", "o", "d", "entry", "posting", "level",
    }  # fmt: skip
    return reads_all or "BLOOM FILTER" in line or "AUTOMATIC" in line


@pytest.mark.parametrize("act", HOT.values(), ids=list(HOT))
def test_a_hot_statement_goes_by_index(
    act: Callable[[Connection, int], object], sqlite_walked: Keeper
) -> None:
    with sqlite_walked.reading() as connection:
        lot = queries.lot_by_code(connection, "OE-001-5")
        assert lot is not None
        with listening(connection) as asked:
            act(connection, lot.seq)
        plans = {one[0]: plan_lines(connection, one) for one in asked}
    assert plans
    assert {s: slow for s, lines in plans.items() if (slow := [*filter(is_slow, lines)])} == {}


def test_a_statement_without_an_index_is_found_out(sqlite_walked: Keeper) -> None:
    with sqlite_walked.reading() as connection:
        lines = plan_lines(connection, ("SELECT 1 FROM entry e WHERE e.reason = 'x'", ()))
    assert [line for line in lines if is_slow(line)] == ["SCAN e"]
