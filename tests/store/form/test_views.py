"""Whoever opens the book with a plain SQL client reads it in her own units and on her clock."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from typing import Any

import pytest

from ledger.service.lots.stock import stock
from ledger.store.form.kept import kept_views
from ledger.store.form.views import on_server
from reports.kit.amounts import UNITS, amount_in
from tests.keeper import Keeper
from tests.path import Lots

OURS = ("v_entries", "v_looks", "v_money", "v_moves", "v_receipts", "v_stock")


@pytest.fixture
def client(walked: tuple[Keeper, Lots]) -> Iterator[sqlite3.Connection]:
    """A client that knows nothing of pottle, after an entry was corrected and one struck."""
    keeper, lots = walked
    received = next(entry for entry in keeper.entries() if entry.kind == "receipt")
    keeper.do("correct", entry=str(received.seq), changes="cost=49.50", because="read again")
    keeper.clock.now = datetime(2026, 7, 2, 9, tzinfo=UTC)
    note = keeper.do("note", lot=lots.oil, text="Odd", at="2026-07-01 00:30")
    keeper.do("strike", entry=str(note.seq), because="another lot")
    with closing(sqlite3.connect(keeper.book.where)) as connection:
        connection.row_factory = sqlite3.Row
        yield connection


def rows(client: sqlite3.Connection, query: str) -> list[dict[str, Any]]:
    return [dict(row) for row in client.execute(query)]


def test_stock_is_what_the_list_of_stock_says(
    client: sqlite3.Connection, walked: tuple[Keeper, Lots]
) -> None:
    told = {row["lot"]: row for row in rows(client, "SELECT * FROM v_stock")}
    for lot in stock(walked[0].book, everything=True):
        unit = {"mL": "ml", "g": "g", "each": "each"}[UNITS[lot.measure]]
        assert told[lot.code][f"on_hand_{unit}"] == float(amount_in(lot.on_hand, lot.measure))
        assert told[lot.code]["status"] == str(lot.status)
    assert told[walked[1].oil]["best_before_given"] == "2027-06-30"


def test_entries_say_whether_they_stand_and_when_they_happened_on_their_clock(
    client: sqlite3.Connection,
) -> None:
    # Dublin is an hour ahead of UTC in July, so the small hours are of the day before there.
    (note,) = rows(client, "SELECT * FROM v_entries WHERE standing = 'struck'")
    assert (note["kind"], note["happened"], note["made_by"]) == ("note", "2026-07-01 00:30", "AB")
    (old,) = rows(
        client, "SELECT * FROM v_entries WHERE standing = 'corrected' AND kind = 'receipt'"
    )
    (new,) = rows(client, f"SELECT * FROM v_entries WHERE entry = {old['corrected_by']}")
    assert (new["corrects"], new["standing"]) == (old["entry"], "in force")


def test_receipts_and_money_are_in_coins_with_a_price_for_the_unit(
    client: sqlite3.Connection,
) -> None:
    told = "SELECT * FROM v_money WHERE standing = 'in force' AND what = 'cost'"
    (oil,) = rows(client, told)
    assert (oil["amount"], oil["currency"], oil["per_ml"], oil["per_g"]) == (
        49.5,
        "EUR",
        0.099,
        None,
    )
    (paid, _) = rows(client, "SELECT * FROM v_receipts WHERE cost IS NOT NULL ORDER BY entry")
    assert (paid["amount_ml"], paid["cost"], paid["standing"]) == (500.0, 48.0, "corrected")


def test_looks_and_moves_are_told(client: sqlite3.Connection, walked: tuple[Keeper, Lots]) -> None:
    _, lots = walked
    looks = rows(client, f"SELECT * FROM v_looks WHERE lot = '{lots.essence}'")
    assert [(look["grade"], look["ntu"]) for look in looks] == [("hazy", 9.4)]
    query = f"SELECT * FROM v_moves WHERE from_lot = '{lots.packed}' AND outside = 'sale'"
    assert all(row["party"] and row["taken_each"] for row in rows(client, query))
    assert rows(client, query)


def test_names_need_no_quoting(client: sqlite3.Connection) -> None:
    views = [
        row["name"] for row in rows(client, "SELECT name FROM sqlite_master WHERE type='view'")
    ]
    assert sorted(name for name in views if name.startswith("v_")) == list(OURS)
    for view in OURS:
        names = [column[0] for column in client.execute(f"SELECT * FROM {view}").description]
        client.execute(f"SELECT {', '.join(names)} FROM {view}")
        assert all(re.fullmatch("[a-z_]+", name) for name in names)


def test_only_the_local_time_differs_on_a_server() -> None:
    changed = [name for name, query in kept_views().items() if on_server(query) != query]
    assert changed == ["v_entries"]
