"""A trace as a table: every movement a row, amounts in units that people use."""

from ledger.service.lots.shares import traced
from reports.words.lots.trace_table import trace_sheet
from tests.keeper import Keeper
from tests.path import Lots


def test_every_movement_is_a_row_back_then_forward(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    sheet = trace_sheet(traced(keeper.book, lots.packed))
    told = [dict(zip(sheet.heads, row, strict=True)) for row in sheet.rows]
    assert [(row["way"], row["lot"], row["to"], row["amount"], row["unit"]) for row in told] == [
        ("back", lots.syrup, lots.packed, "3750", "mL"),
        ("back", lots.bottles, lots.packed, "15", "each"),
        ("back", lots.sugar, lots.syrup, "2400", "g"),
        ("back", lots.water, lots.syrup, "2400", "mL"),
        ("back", lots.essence, lots.syrup, "30", "mL"),
        ("back", lots.oil, lots.essence, "30.769", "mL"),
        ("back", lots.carb, lots.essence, "15", "g"),
        ("back", lots.spirit, lots.essence, "440", "mL"),
        ("forward", lots.packed, "Bridge Street Stall", "6", "each"),
    ]
