"""Lists as tables for a spreadsheet: every column, filled and empty."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Clean, Complaint, Facts, Material, Receipt
from ledger.domain.entries.choices import Grade, LotType, MoveAs, Origin, Precision
from ledger.domain.lots.lot import Lot, Status
from ledger.service.lots.complaints import Complained
from ledger.service.lots.due import Due, DueList, Waits
from ledger.service.lots.journal import Said
from ledger.service.lots.sales import Sale
from ledger.service.lots.stock import Low
from reports.kit.tables import Sheet
from reports.words.lots import sheets
from reports.words.lots import sheets as module
from tests.domain.builders import entry, make, when
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.reports.words.examples import EXAMPLES

OIL = Lot(
    3, "SOO-001-3", LotType.RECEIVED, Measure.UL, None, "Sweet orange oil", Status.IN_STOCK,
    469_231, material="orange-oil", supplier="Harbour Oils", supplier_lot="C7731",
    best_before=date(2027, 6, 30), is_reckoned=True,
)  # fmt: skip
SYRUP = Lot(
    9, "BOS-001-S", LotType.PACKED, Measure.UEACH, None, "Orange syrup, 250 mL", Status.RELEASED,
    9_000_000, product="Orange syrup", grade=Grade.CLOUDY,
)  # fmt: skip
SOLD = Sale(SYRUP, "A stall", MoveAs.SALE, 6_000_000, 250_000, date(2026, 3, 4), "D-7", 34)
NOW = datetime(2026, 3, 2, 9, tzinfo=UTC)
FACTS = {type(facts): facts for facts, _ in EXAMPLES}


def of(facts: type[Facts], **changes: Any) -> Any:
    """Return the whole example of a kind of entry, or an entry of it with little said."""
    return entry(FACTS[facts] if not changes else make(facts), 7, **changes)


def tables() -> dict[str, Sheet]:
    """Return every table by its name."""
    by_day = replace(when(), precision=Precision.DAY)
    return {
        "stock": sheets.stock_sheet((OIL, SYRUP), None, "EUR"),
        "stock with value": sheets.stock_sheet((OIL, SYRUP), {3: 4_512}, "EUR"),
        "stock in whole yen": sheets.stock_sheet((SYRUP,), {9: 451}, "JPY"),
        "low": sheets.low_sheet((Low(make(Material), 30_500, Measure.MG),)),
        "journal": sheets.journal_sheet(
            (
                Said(
                    replace(
                        entry(Clean("jar 2", "steam"), 7, lot="E-1", reason="wet", corrects=3),
                        draft=replace(
                            entry(Clean("jar 2", "steam")).draft,
                            lot="E-1",
                            reason="wet",
                            corrects=3,
                            origin=Origin.PAPER,
                            sheet="S-4",
                        ),
                    ),
                    9,
                ),
                Said(entry(Clean("jar 2", "steam"), 8, by=None, lot=None), None),
            )
        ),
        "due": sheets.due_sheet(
            DueList(
                NOW,
                (
                    Due(Waits.DATE, "BS-1", "Syrup", "2026-03-03", NOW + timedelta(days=1)),
                    Due(Waits.HOLD, "BS-2", "Held", "cloudy", None),
                ),
            )
        ),
        "complaints": sheets.complaints_sheet(
            (
                Complained(of(Complaint), SYRUP, None),
                Complained(of(Complaint, by=None), SYRUP, None),
            )
        ),
        "sales": sheets.sales_sheet(
            (
                SOLD,
                replace(SOLD, moved_as=MoveAs.RETURNED, party=None, bottle_ul=None, document=None),
            )
        ),
        "deliveries": sheets.receipts_sheet(
            (of(Receipt, lot="SOO-001-3", by="CD"), of(Receipt), of(Receipt, lot=None, by=None)),
            "EUR",
        ),
        "cleanings": sheets.cleanings_sheet((of(Clean), of(Clean, by=None, happened=by_day))),
    }


def test_every_table_for_a_spreadsheet_is_the_kept_one() -> None:
    told = []
    for name, table in tables().items():
        told += [name, *(", ".join(cells) for cells in (table.heads, *table.rows)), ""]
        assert {len(row) for row in table.rows} == {len(table.heads)}
    check_golden("sheets.txt", "\n".join(told))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
