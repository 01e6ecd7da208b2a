"""The statements that run at every entry and every trace find their rows by index."""

import re
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

import pytest
from sqlalchemy import Connection

from ledger.domain.entries import Receipt
from ledger.service.glass.cost import cost
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from ledger.service.lots.trace import trace
from ledger.service.verdicts.gate import in_the_way
from ledger.store.engine import statements as asking
from ledger.store.read import (
    amounts,
    inputs,
    lots,
    periods,
    queries,
    reach,
    received,
    sent,
    steps,
    walk,
)
from ledger.store.read import dates as dating
from ledger.store.read.lots import codes_of_stem, lots_by_number
from ledger.store.read.made import bottle_sizes, finished, kinds_made
from ledger.store.read.queries import Moment
from ledger.store.read.reach import entries_of_lots, made_of
from ledger.store.read.turnover import turnovers
from tests.heard import heard
from tests.keeper import Keeper

NOON = Moment(datetime(2026, 3, 5, 12, tzinfo=UTC), 40)

HOT: dict[str, Callable[[Connection, int], object]] = {
    "codes of a stem": lambda connection, _: codes_of_stem(connection, "OE-"),
    "walk back": walk.back,
    "walk forward": walk.forward,
    "what went in": lambda connection, lot: [*walk.edges_into(connection, [lot, lot + 1])],
    "many lots": lambda connection, lot: lots_by_number(connection, [lot, lot + 1]),
    "what was sent": lambda connection, lot: [*sent.moves_from(connection, [lot, lot + 1])],
    "what is behind": walk.behind,
    "a step back": lambda connection, lot: walk.back(connection, lot, 2),
    "the house": lambda connection, _: queries.house(connection),
    "a material": lambda connection, _: queries.material(connection, "spirit"),
    "formulas": lambda connection, _: queries.formulas(connection, "essence"),
    "deliveries": lambda connection, _: received.deliveries(connection, "spirit"),
    "materials of lots": lambda connection, lot: received.materials_of(connection, [lot, 9]),
    "a kind": lambda connection, _: queries.entries_of_kind(connection, Receipt),
    "dates": lambda connection, lot: dating.dated(connection, [lot]),
    "held now": amounts.held,
    "held then and now": lambda connection, lot: amounts.held_then_and_now(connection, lot, NOON),
    "held then": lambda connection, lot: amounts.held(connection, lot, NOON, skip=20),
    "entries of a lot": queries.entries_of_lot,
    "all entries of a lot": queries.all_entries_of_lot,
    "draws on a lot": lambda connection, lot: queries.draws_on(connection, lot, NOON.at),
    "entries about a lot": queries.entries_about,
    "numbers of inputs": inputs.numbers_into,
    "inputs": lambda connection, lot: inputs.inputs(connection, [lot, lot - 1]),
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
def listening(connection: Connection) -> Iterator[list[str]]:
    """Hear every statement that the engine runs, its values put in."""
    asked: list[str] = []
    driver = connection.connection.driver_connection
    assert isinstance(driver, sqlite3.Connection)
    driver.set_trace_callback(asked.append)
    try:
        yield asked
    finally:
        driver.set_trace_callback(None)


def plan_lines(connection: Connection, asked: str) -> list[str]:
    found = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {asked}")
    return [row.detail for row in found]


def is_slow(line: str) -> bool:
    """Tell whether a step of a plan reads a whole table, or makes an index to use it once."""
    reads_all = line.startswith("SCAN ") and line.split()[1] in {
        "e", "c", "p", "l", "o", "d", "entry", "posting", "level", "lot",
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
        plans = {one: plan_lines(connection, one) for one in asked}
    assert plans
    assert {s: slow for s, lines in plans.items() if (slow := [*filter(is_slow, lines)])} == {}


def test_a_statement_without_an_index_is_found_out(sqlite_walked: Keeper) -> None:
    with sqlite_walked.reading() as connection:
        lines = plan_lines(connection, "SELECT 1 FROM entry e WHERE e.reason = 'x'")
    assert [line for line in lines if is_slow(line)] == ["SCAN e"]


LAST_ROW = "FROM entry ORDER BY seq DESC LIMIT 1"
OF_ONE_LOT: dict[str, Callable[[Keeper], object]] = {
    "start": lambda keeper: keeper.do("start", product="Orange", kind="essence", target="1 L"),
    "add": lambda keeper: keeper.do("add", lot="OE-001-5", source="NS-001-J", amount="3 mL"),
    "look": lambda keeper: keeper.do("look", lot="OE-001-5", grade="bright"),
    "receive": lambda keeper: keeper.do("receive", material="spirit", amount="1 L"),
    "lot": lambda keeper: dossier(keeper.book, "OE-001-5"),
    "trace": lambda keeper: trace(keeper.book, "OE-001-5"),
    "serving": lambda keeper: card(keeper.book, "BOS-001-S"),
    "cost": lambda keeper: cost(keeper.book, "BOS-001-S"),
    "gate": lambda keeper: in_the_way(keeper.book, "BOS-001-S"),
}
"""What is asked of one lot: the label and the record are told from `lot` and `serving`."""


@pytest.mark.parametrize("act", OF_ONE_LOT.values(), ids=list(OF_ONE_LOT))
def test_a_question_about_one_lot_reads_no_table_whole(
    act: Callable[[Keeper], object], sqlite_walked: Keeper
) -> None:
    with heard(sqlite_walked.book) as asked:
        act(sqlite_walked)
    # Of what is read backwards by the key the one row is all that is read.
    reads = [
        one
        for one in asked
        if one.lstrip().startswith(("SELECT", "WITH")) and not one.endswith(LAST_ROW)
    ]
    with sqlite_walked.reading() as connection:
        plans = {one: plan_lines(connection, one) for one in reads}
    assert plans
    assert {s: slow for s, lines in plans.items() if (slow := [*filter(is_slow, lines)])} == {}


TRACED: dict[str, Callable[[Connection, int], object]] = {
    "walk back": walk.back,
    "walk forward": walk.forward,
    "a step back": lambda connection, lot: walk.back(connection, lot, 2),
    "what went in": lambda connection, lot: [*walk.edges_into(connection, [lot])],
    "many lots": lambda connection, lot: lots_by_number(connection, [lot]),
    "what was sent": lambda connection, lot: [*sent.moves_from(connection, [lot])],
}


@pytest.mark.parametrize("act", TRACED.values(), ids=list(TRACED))
def test_a_trace_on_a_server_goes_by_index_whatever_the_server_guesses(
    act: Callable[[Connection, int], object],
    postgres_walked: Keeper,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """In a book as small as this a server left to itself would read whole tables."""
    heard: list[str] = []
    told = asking._told

    def hear(statement: str) -> str:
        heard.append(told(statement))
        return heard[-1]

    monkeypatch.setattr(asking, "_told", hear)
    with postgres_walked.reading() as connection:
        lot = queries.lot_by_code(connection, "OE-001-5")
        assert lot is not None
        act(connection, lot.seq)
        statements = {one for one in heard if "FROM posting" in one or "entry" in one}
        plans = {one: server_plan(connection, one) for one in statements}
    assert plans
    slow = ("Seq Scan", "Hash Join", "Merge Join", "Materialize", "Index Cond: (kind")
    assert {s: plan for s, plan in plans.items() if any(word in plan for word in slow)} == {}


PINNED: dict[str, Callable[[Connection, int], object]] = {
    "all behind": lambda book, lot: walk.all_behind(book, [lot]),
    "back": lambda book, lot: walk.back(book, lot),
    "edges into": lambda book, lot: [*walk.edges_into(book, [lot])],
    "entries of lots": lambda book, lot: reach.entries_of_lots(book, [lot], ["look"]),
    "forward": lambda book, lot: walk.forward(book, lot),
    "lots by number": lambda book, lot: lots.lots_by_number(book, [lot]),
    "lots of a period": lambda book, _: periods.lots_of_period(book, "2026-03-02", "2026-03-05"),
    "lots on hand": lambda book, _: lots.lots_on_hand(book),
    "materials of": lambda book, lot: received.materials_of(book, [lot]),
    "kinds made": lambda book, _: kinds_made(book, ["OE-001-5"]),
    "moves from": lambda book, lot: [*sent.moves_from(book, [lot])],
    "received": lambda book, lot: received.received(book, [lot]),
    "sources behind": lambda book, lot: walk.sources_behind(book, [lot]),
    "spent on": lambda book, lot: steps.spent_on(book, [lot]),
    "steps": lambda book, lot: steps.steps_of(book, [lot]),
}
"""Readers that look for a few rows of many, by what they find."""


def test_every_reader_of_many_lots_tells_a_server_to_go_by_index(postgres_walked: Keeper) -> None:
    """It lasts until the transaction ends, so that each begins without it."""
    seen: dict[str, list[object]] = {}
    for name, act in PINNED.items():
        with postgres_walked.reading() as book:
            lot = queries.lot_by_code(book, "OE-001-5")
            assert lot is not None
            before = book.exec_driver_sql("SHOW enable_seqscan").scalar()
            act(book, lot.seq)
            seen[name] = [before, book.exec_driver_sql("SHOW enable_seqscan").scalar()]
    assert seen == {name: ["on", "off"] for name in PINNED}


def server_plan(connection: Connection, statement: str) -> str:
    """Return the plan that a server makes of a statement before it knows its values."""
    names = iter(range(1, 99))
    numbered = re.sub(r"%\(\w+\)s", lambda _: f"${next(names)}", statement).replace("%%", "%")
    found = connection.exec_driver_sql(
        f"EXPLAIN (GENERIC_PLAN) {numbered}", execution_options={"no_parameters": True}
    )
    return "\n".join(found.scalars())
