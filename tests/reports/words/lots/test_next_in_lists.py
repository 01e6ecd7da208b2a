"""The next step after a list: read off what was shown."""

from datetime import UTC, datetime, timedelta

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import Grade
from ledger.domain.lots.lot import Status
from ledger.service.lots.due import Due, Waits, due
from ledger.service.lots.stock import low_materials, stock
from ledger.service.lots.trace import trace
from reports.words.lots import next_in_lists as module
from reports.words.lots.next_in_lists import step_of_due, step_of_low, step_of_stock, step_of_trace
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots, receive_all

NOW = datetime(2026, 3, 2, 12, tzinfo=UTC)


@pytest.mark.parametrize(
    ("waits", "minutes", "step"),
    [
        (Waits.REST, -5, "pottle rest X-1 --end"),
        (Waits.LOOK, 5, "pottle look X-1 GRADE --of neat"),
        (Waits.ANSWER, None, "pottle answer 17 OUTCOME --told today"),
        (Waits.DATE, -1, 'pottle reject X-1 --because "past its date"'),
        (Waits.DATE, 0, "pottle lot X-1"),
        (Waits.DATE, 1, "pottle lot X-1"),
        (Waits.DATE, None, "pottle lot X-1"),
        (Waits.HOLD, -1, "pottle lot X-1"),
    ],
)
def test_what_waits_has_its_command(waits: Waits, minutes: int | None, step: str) -> None:
    at = None if minutes is None else NOW + timedelta(minutes=minutes)
    assert step_of_due(Due(waits, "X-1", "Orange essence", "", at, number=17), NOW) == step


def test_what_is_made_or_waits_for_its_release_is_under_way(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = trace(keeper.book, lots.packed).lot
    under_way = {
        status
        for status in Status
        if step_of_stock([replace(found, status=status)]) == f"pottle lot {lots.packed}"
    }
    assert under_way == {Status.MAKING, Status.PACKED}
    newest = [
        replace(found, status=Status.MAKING, code=f"X-{seq}", seq=seq) for seq in (2, 9, 10, 3)
    ]
    last = max(newest, key=lambda lot: lot.position)
    assert step_of_stock(newest) == f"pottle lot {last.code}"


def first_due(keeper: Keeper) -> str:
    found = due(keeper.book)
    return step_of_due(found.items[0], found.now)


def test_a_rest_is_ended(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Free", kind="blend", target="1L")
    sqlite_keeper.do("add", lot=code, source=lots.spirit, amount="1L")
    sqlite_keeper.do("rest", lot=code, purpose="settle")
    assert first_due(sqlite_keeper) == f"pottle rest {code} --end"


def test_a_sample_is_looked_at(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    bulk = sqlite_keeper.opens("start", product="Plain", kind="blend", target="1L")
    sqlite_keeper.do("add", lot=bulk, source=lots.spirit, amount="1L")
    sqlite_keeper.do("finish", lot=bulk, volume="1L")
    packed = sqlite_keeper.opens("bottle", source=bulk, pack="4 x 250mL", bottles=lots.bottles)
    sqlite_keeper.do("send", lot=packed, amount="1", moved_as="retained")
    assert first_due(sqlite_keeper) == f"pottle look {packed} GRADE --of neat"


@pytest.mark.parametrize(
    ("days", "step"), [(1, "pottle lot {}"), (5, 'pottle reject {} --because "past its date"')]
)
def test_what_is_past_its_date_is_rejected_and_what_is_not_yet_is_looked_up(
    days: int, step: str, sqlite_keeper: Keeper
) -> None:
    code = sqlite_keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-03-05")
    sqlite_keeper.clock.forward(days=days)
    assert first_due(sqlite_keeper) == step.format(code)


def test_stock_leads_to_the_newest_lot_under_way_else_to_what_is_due(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    assert step_of_stock(stock(keeper.book)) == "pottle receive MATERIAL AMOUNT"
    lots = receive_all(keeper)
    assert step_of_stock(stock(keeper.book)) == "pottle due"
    for product in ("First", "Second"):
        code = keeper.opens("start", product=product, kind="blend", target="1L")
        keeper.do("add", lot=code, source=lots.spirit, amount="100mL")
    assert step_of_stock(stock(keeper.book)) == f"pottle lot {code}"


def test_a_lot_of_which_the_book_has_less_than_nothing_is_counted(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    code = keeper.opens("start", product="First", kind="blend", target="1L")
    keeper.do("add", lot=code, source=lots.oil, amount="600mL", because="a bottle more was there")
    assert step_of_stock(stock(keeper.book)) == f"pottle count {lots.oil} AMOUNT"


def test_what_is_lowest_is_received_first(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.opens("receive", material="orange-oil", amount="500mL")
    sqlite_keeper.opens("receive", material="spirit", amount="300mL")
    low = low_materials(sqlite_keeper.book, 600_000, Measure.UL)
    assert step_of_low(low) == "pottle receive spirit AMOUNT"
    assert step_of_low(()) == "pottle stock"


def test_what_is_used_up_is_not_counted_and_what_is_below_nothing_comes_first(
    sqlite_keeper: Keeper,
) -> None:
    receive_all(sqlite_keeper)
    lots = stock(sqlite_keeper.book)
    empty = [replace(lots[0], on_hand=0), *lots[1:]]
    assert step_of_stock(empty) == "pottle due"
    below = [*empty, replace(lots[0], code="X-1", on_hand=-1), replace(lots[0], on_hand=-2)]
    assert step_of_stock(below) == "pottle count X-1 AMOUNT"


def test_a_trace_leads_to_a_cause_where_it_is_not_clear_to_a_drill_where_it_is_out_else_to_it(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = {code: trace(keeper.book, code) for code in (lots.oil, lots.packed, lots.spirit)}
    assert step_of_trace(found[lots.packed]) == f"pottle suspects {lots.packed}"
    packed = found[lots.packed]
    for grade, status, holders, step in (
        (Grade.CLEAR, packed.lot.status, packed.holders, f"pottle recall {lots.packed} --drill"),
        (Grade.BRIGHT, packed.lot.status, (), f"pottle lot {lots.packed}"),
        (None, Status.HELD, (), f"pottle recall {lots.packed} --drill"),
        (Grade.HAZY, Status.HELD, (), f"pottle suspects {lots.packed}"),
    ):
        lot = replace(packed.lot, grade=grade, status=status)
        assert step_of_trace(replace(packed, lot=lot, holders=holders)) == step
    oil = replace(found[lots.oil], lot=replace(found[lots.oil].lot, grade=Grade.CLOUDY), holders=())
    assert step_of_trace(oil) == f"pottle lot {lots.oil}"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
