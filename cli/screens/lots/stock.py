"""Lists of stock: what is on hand, by date, by product, low, and its value.

Guarantees: codes are never cut.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from cli.kit.call import Call
from cli.kit.sheets import put_sheet
from cli.kit.tables import print_json, print_lines, print_table
from ledger.domain.amounts.money import coins, digits_of
from ledger.domain.amounts.quantity import parse_quantity, show
from ledger.domain.lots.lot import Lot
from ledger.service.desk.clock import house_of
from ledger.service.lots.stock import first_expired, low_materials, stock, values_left
from reports.json.lots.stock import low_rows, stock_rows
from reports.kit.format import money
from reports.words.lots.next_in_lists import step_of_low, step_of_stock
from reports.words.lots.sheets import low_sheet, stock_sheet
from reports.words.lots.there import there_words

HEADS = ("lot", "what", "on hand", "status", "best before", "look")
"""Heads of the list of stock."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which lots are listed, and how."""

    everything: bool = False
    """Also those that are used up."""
    by_date: bool = False
    """First expired first."""
    value: bool = False
    """With what is left of their cost."""
    of: str | None = None
    """Only of this material or product."""
    csv: Path | None = None
    """Spreadsheet to write."""
    force: bool = False
    """Whether it may take the place of a file."""


def list_stock(call: Call, wanted: Wanted) -> None:
    """List the lots on hand."""
    book, of = call.book(), wanted.of
    found = tuple(item for item in stock(book, everything=wanted.everything) if _is_of(item, of))
    found = first_expired(found) if wanted.by_date else found
    values = values_left(book, found) if wanted.value else {}
    house = house_of(book)
    currency = house.currency if house else ""
    if wanted.csv:
        table = stock_sheet(found, values if wanted.value else None, currency)
        put_sheet(call, table, wanted.csv, force=wanted.force)
    if call.json:
        print_json(stock_rows(found, values, currency))
    elif wanted.csv:
        return
    elif not found:
        what = f"of {of} " if of else ""
        print_lines([f"Nothing {what}is on hand.", f"Next: {step_of_stock(found)}"])
    else:
        _print_stock(found, values if wanted.value else None, currency)
        print_lines([f"Next: {step_of_stock(found)}"])


def _print_stock(found: Sequence[Lot], values: Mapping[int, int] | None, currency: str) -> None:
    if values is None:
        print_table(HEADS, [_row(item) for item in found], right="on hand")
        return
    digits = digits_of(currency)
    rows = [_row(item, [_coins(values.get(item.seq), digits)]) for item in found]
    print_table((*HEADS[:3], "value", *HEADS[3:]), rows, right="on hand,value")
    total = money(sum(values.values()), currency, digits)
    print_lines([f"Value of what is on hand: {total}."])


def list_low(call: Call, threshold: str, of: str | None, csv: Path | None, *, force: bool) -> None:
    """List the materials of which little is there."""
    book = call.book()
    house = house_of(book)
    least = parse_quantity(
        threshold, counted=True, fluid_ounce=house.fluid_ounce if house else "US"
    )
    found = [
        item
        for item in low_materials(book, least.amount, least.measure)
        if of is None or _plain(of) in (_plain(item.material.code), _plain(item.material.name))
    ]
    if csv:
        put_sheet(call, low_sheet(found), csv, force=force)
    if call.json:
        print_json(low_rows(found))
    if call.json or csv:
        return
    if found:
        rows = [
            [item.material.code, item.material.name, show(item.on_hand, item.measure)]
            for item in found
        ]
        print_table(("material", "name", "on hand"), rows, right="on hand")
    else:
        print_lines([f"Of every material counted so, {threshold} or more is there."])
    print_lines([f"Next: {step_of_low(found)}"])


def _is_of(brief: Lot, of: str | None) -> bool:
    if of is None:
        return True
    return _plain(of) in {_plain(item) for item in (brief.material, brief.product, brief.name)}


def _plain(name: str | None) -> str:
    """Return a name without what makes a code of it: capitals and hyphens."""
    return (name or "").strip().lower().replace("-", " ")


def _row(brief: Lot, value: Sequence[str] = ()) -> list[str]:
    return [
        brief.code,
        brief.name,
        there_words(brief),
        *value,
        str(brief.status),
        str(brief.best_before or ""),
        brief.grade or "",
    ]


def _coins(minor: int | None, digits: int) -> str:
    return "" if minor is None else coins(minor, digits)
