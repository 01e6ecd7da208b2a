"""The tables of a recall's pack."""

from ledger.service.recall.standing import recall_of
from reports.words.recall import tables as module
from reports.words.recall.tables import recall_sheets
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_said
from tests.kept.told import told
from tests.path import Lots
from tests.reports.words.recall.story import recalled


def test_every_delivery_is_a_row_with_whom_to_call(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    sheets = recall_sheets(recall_of(keeper.book, lots.oil))
    assert sorted(sheets) == ["balance", "calls", "contacts", "lots"]
    (row,) = sheets["calls"].rows
    told = dict(zip(sheets["calls"].heads, row, strict=True))
    assert (told["order"], told["party"], told["phone"]) == ("1", "Bridge Street Stall", "")
    assert (told["lot"], told["amount"], told["unit"]) == (lots.packed, "6", "each")
    assert (told["may_have_bottles"], told["may_have_ml"], told["spoken_to"]) == ("6", "1500", "no")
    assert sheets["contacts"].rows == ()


def test_the_tables_of_a_recall_in_which_all_happens_are_the_kept_ones(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    sheets = recall_sheets(recalled(keeper, lots))
    lines = [line for name, sheet in sheets.items() for line in told(name, sheet)]
    check_golden("recall_tables.txt", "\n".join((*lines, "")))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
