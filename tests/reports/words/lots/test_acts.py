"""Sales, deliveries and cleanings as rows of words and of a spreadsheet."""

from ledger.domain.entries import Clean, Receipt
from ledger.service.lots.sales import Period, acts_of, sales
from reports.kit.format import clock
from reports.words.lots import acts as module
from reports.words.lots.acts import (
    CLEANINGS,
    RECEIPTS,
    SALES,
    cleaning_cells,
    receipt_cells,
    sale_cells,
    totals,
)
from reports.words.lots.sheets import receipts_sheet, sales_sheet
from tests.domain.builders import entry
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_what_came_back_is_taken_off_in_words_and_stands_apart_in_a_spreadsheet(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    party = sales(keeper.book, Period())[0].party or ""
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party=party)
    sold, back = found = sales(keeper.book, Period())
    assert dict(zip(SALES, sale_cells(back), strict=True)) == {
        "day": back.on.isoformat(),
        "customer": party,
        "lot": lots.packed,
        "what": "Orange syrup, 250 mL",
        "how": "returned",
        "amount": "2",
        "document": "",
    }
    left = (sold.amount - back.amount) // 10**6
    assert totals(found) == [f"{party}: {left} of Orange syrup, 250 mL."]
    rows = [
        dict(zip(sales_sheet(found).heads, row, strict=True)) for row in sales_sheet(found).rows
    ]
    assert [(row["out_each"], row["back_each"]) for row in rows] == [
        (str(sold.amount // 10**6), "0"),
        ("0", "2"),
    ]


def test_a_delivery_has_its_cost_in_the_house_s_money(walked: tuple[Keeper, Lots]) -> None:
    (oil, *_) = acts_of(walked[0].book, Receipt, Period())
    assert dict(zip(RECEIPTS, receipt_cells(oil, "EUR"), strict=True)) == {
        "day": "2026-03-02",
        "lot": walked[1].oil,
        "material": "orange-oil",
        "amount": "500 mL",
        "from": "Harbour Oils",
        "their lot": "C7731",
        "cost": "48.00 EUR",
    }
    table = receipts_sheet([oil], "EUR")
    row = dict(zip(table.heads, table.rows[0], strict=True))
    assert (row["amount_ml"], row["amount_g"], row["cost_eur"]) == ("500", "", "48.00")


def test_a_cleaning_says_who_did_it_and_what_the_vessel_last_held_where_they_are_known() -> None:
    known = entry(Clean("jar 2", "hot water", "Orange essence"))
    bare = entry(Clean("jar 2", "hot water"), by=None)
    when = clock(known.draft.happened)
    assert CLEANINGS == ("when", "vessel", "how", "held", "by")
    assert cleaning_cells(known) == [when, "jar 2", "hot water", "Orange essence", "AB"]  # type: ignore[arg-type]
    assert cleaning_cells(bare) == [when, "jar 2", "hot water", "", ""]  # type: ignore[arg-type]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
