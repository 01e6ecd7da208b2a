"""Stock, for machines: each lot with its value, and what is low with the command for it."""

from msgspec.structs import asdict

from ledger.domain.amounts.quantity import Measure
from ledger.domain.lots.lot import Lot
from ledger.service.lots.stock import Low, low_materials, stock
from reports.json.kit.answer import Amount
from reports.json.kit.lot import lot_brief
from reports.json.lots import stock as module
from reports.json.lots.stock import LowRow, low_rows, stock_rows
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.kept.said import check_constants
from tests.path import receive_all
from tests.reports.json.kept import check


def test_a_lot_has_its_value_in_the_currency_of_the_book_or_none(sqlite_keeper: Keeper) -> None:
    receive_all(sqlite_keeper)
    first, second, *_ = lots = stock(sqlite_keeper.book)
    rows = stock_rows(lots, {first.seq: 4_805}, "EUR")
    assert [(row.code, row.value, row.currency) for row in rows[:2]] == [
        (first.code, "48.05", "EUR"),
        (second.code, None, None),
    ]
    (yen,) = stock_rows([first], {first.seq: 4_805}, "JPY")
    assert (yen.value, yen.currency) == ("4805", "JPY")
    (free,) = stock_rows([first], {first.seq: 0}, "EUR")
    assert free.value == "0.00"
    brief = asdict(lot_brief(first))
    assert asdict(rows[0]) == brief | {"value": "48.05", "currency": "EUR"}


def test_what_is_low_says_how_much_there_is_and_how_more_is_received(
    sqlite_keeper: Keeper,
) -> None:
    sqlite_keeper.opens("receive", material="orange-oil", amount="500mL")
    sqlite_keeper.opens("receive", material="spirit", amount="300mL")
    assert low_rows(low_materials(sqlite_keeper.book, 600_000, Measure.UL)) == [
        LowRow(
            material="spirit",
            name="Neutral spirit",
            on_hand=Amount("300", "mL"),
            next="pottle receive spirit AMOUNT",
        ),
        LowRow(
            material="orange-oil",
            name="Sweet orange oil",
            on_hand=Amount("500", "mL"),
            next="pottle receive orange-oil AMOUNT",
        ),
    ]


def test_every_part_of_a_lot_in_stock_and_of_what_is_low_stands_under_its_own_key() -> None:
    rows = stock_rows([filled(Lot, seq=7), bare(Lot, seq=8)], {7: 123}, "EUR")
    check("stock_filled", *rows, *low_rows([filled(Low), bare(Low)]))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
