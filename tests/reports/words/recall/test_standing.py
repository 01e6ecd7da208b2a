"""How far a recall is, in words."""

from ledger.service.recall.standing import recall_of
from reports.words.recall.standing import balance_line, call_lines, course, lot_rows, lots_made
from tests.keeper import Keeper
from tests.path import Lots


def test_a_drill_is_said_to_hold_nothing(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = recall_of(keeper.book, lots.oil)
    assert list(course(found, drill=True)) == ["DRILL: nothing was held and nothing was recorded."]
    assert lots_made(found) == (
        "SOO-001-3, Sweet orange oil: 3 lots made of it, 1 lot of bottles in all."
    )
    assert balance_line(found) == "15 bottles made = 9 here + 6 sent + 0 unexplained."


def test_a_call_has_its_deliveries_below_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert list(call_lines(recall_of(keeper.book, lots.oil))) == [
        "1. Bridge Street Stall: no telephone number in the book; at most 6 bottles (1.5 L)",
        "     BOS-001-S: 6 sold, 2026-03-04",
    ]


def test_every_lot_says_how_much_is_here_and_where_it_stands(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    assert lot_rows(recall_of(keeper.book, lots.oil)) == [
        [lots.oil, "Sweet orange oil", "469.231 mL", "recalled"],
        [lots.essence, "Orange essence", "418 mL", "recalled"],
        [lots.syrup, "Orange syrup", "50 mL", "recalled"],
        [lots.packed, "Orange syrup, 250 mL", "9", "recalled"],
    ]
