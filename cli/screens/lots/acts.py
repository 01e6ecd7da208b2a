"""Lists of sales, deliveries and cleanings.

Guarantees: what filters leave out is left out of every form.
"""

from collections.abc import Sequence
from pathlib import Path

from cli.kit.call import Call
from cli.kit.listing import Listing
from cli.kit.sheets import check_sheet
from cli.kit.tables import print_lines
from ledger.domain.entries import Clean, Receipt
from ledger.errors import InputError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of
from ledger.service.lots.sales import Period, acts_of, read_period, sales
from reports.json.lots.acts import cleaning_row, receipt_row, sale_row
from reports.words.lots import acts as words
from reports.words.lots.sheets import cleanings_sheet, receipts_sheet, sales_sheet

NOTHING: dict[str, Sequence[str]] = {
    "sales": ("Nothing went out in that time.", 'Next: pottle send LOT AMOUNT --to "NAME"'),
    "receipts": ("Nothing was delivered in that time.", "Next: pottle receive MATERIAL AMOUNT"),
    "cleanings": ("Nothing was cleaned in that time.", 'Next: pottle clean VESSEL --how "HOW"'),
}
"""What can be listed, with what is said where there is nothing of it."""


def list_acts(
    call: Call,
    what: str,
    days: tuple[str | None, str | None],
    party: str | None,
    csv: Path | None,
    *,
    force: bool,
) -> None:
    """List acts of one sort in a period."""
    if what not in NOTHING:
        raise InputError(f'"{what}" is no list.', f"Write one of: {', '.join(NOTHING)}.")
    period = read_period(*days)
    check_sheet(csv, force=force)
    book = call.book()
    if what == "sales":
        found = sales(book, period, party)
        Listing(
            words.SALES,
            [words.sale_cells(sale) for sale in found],
            NOTHING[what],
            lambda: [sale_row(sale) for sale in found],
            right="amount",
            sheet=lambda: sales_sheet(found),
        ).say(call, csv, force=force)
        if found and not (call.json or csv):
            print_lines(["", *words.totals(found), "Next: pottle stock"])
    elif what == "receipts":
        _receipts(book, period, party).say(call, csv, force=force)
    else:
        cleaned = acts_of(book, Clean, period)
        Listing(
            words.CLEANINGS,
            [words.cleaning_cells(entry) for entry in cleaned],
            NOTHING[what],
            lambda: [cleaning_row(entry) for entry in cleaned],
            sheet=lambda: cleanings_sheet(cleaned),
        ).say(call, csv, force=force)


def _receipts(book: Book, period: Period, party: str | None) -> Listing:
    house = house_of(book)
    currency = house.currency if house else ""
    came = [
        entry
        for entry in acts_of(book, Receipt, period)
        if party is None or entry.facts.supplier == party
    ]
    return Listing(
        words.RECEIPTS,
        [words.receipt_cells(entry, currency) for entry in came],
        NOTHING["receipts"],
        lambda: [receipt_row(entry, currency) for entry in came],
        right="amount,cost",
        sheet=lambda: receipts_sheet(came, currency),
    )
