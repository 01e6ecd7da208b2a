"""A trace as a table: every movement a row, amounts in units that people use."""

from msgspec.structs import replace

from ledger.service.lots.shares import traced
from reports.views.lots import TraceRow
from reports.words.lots import trace_table as module
from reports.words.lots.trace import Branch
from reports.words.lots.trace_table import _paper_row, trace_sheet, trace_view
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.pdf.examples import FRAME


def test_lots_further_away_are_told_on_paper_only_where_there_are_some(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = traced(keeper.book, lots.packed)
    for hidden, told in ((0, ()), (1, ("1 lot",)), (2, ("2 lots",))):
        view = trace_view(replace(found, hidden=hidden), FRAME, back=True, forward=False)
        assert view.notes == tuple(f"{many} further away left out." for many in told)
        assert (view.back is None, view.forward) == (False, None)


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


def test_how_a_lot_stands_and_looks_is_told_in_its_row(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    view = trace_view(traced(keeper.book, lots.packed), FRAME, back=True, forward=False)
    stands = {row.lot: row.status for row in view.back or ()}
    assert (stands[lots.essence], stands[lots.oil]) == ("released, hazy", "in stock")


def test_goods_that_left_are_a_line_on_paper_without_lot_and_share(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    view = trace_view(traced(keeper.book, lots.packed), FRAME, back=False, forward=True)
    sold, here = view.forward or ()
    assert sold == TraceRow(
        1, "", "Bridge Street Stall", "6", "", "2026-03-04", became="sold to", is_held=True
    )
    assert (here.lot, here.share, here.is_held) == ("", "", True)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_goods_without_a_document_and_without_a_party_have_empty_cells(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = traced(keeper.book, lots.oil)
    (sold,) = found.trace.holders
    for party, document in ((None, None), ("Inn", "DN-7")):
        holder = replace(sold, party=party, document=document)
        sheet = trace_sheet(replace(found, trace=replace(found.trace, holders=(holder,))))
        cells = dict(zip(sheet.heads, sheet.rows[-1], strict=True))
        assert (cells["to"], cells["document"]) == (party or "", document or "")


def test_a_line_of_words_alone_and_a_lot_told_above_have_their_other_cells_empty() -> None:
    gone = _paper_row(Branch("2 mL lost", None, (True,)), {}, {})
    assert gone == TraceRow(1, "", "2 mL lost", "", "", "")
    again = _paper_row(Branch("30 mL", "OE-001-5", (False, True), again=True), {}, {})
    assert again == TraceRow(2, "OE-001-5", "see above", "30 mL", "", "")
