"""Tables for spreadsheets, as CSV or as a workbook: one row of heads, then one row a line.

Guarantees: a cell that a spreadsheet would take for a formula is made harmless; every row is as
wide as the heads. Refuses: rows of another width.
"""

import csv
import re
from io import BytesIO, StringIO

from msgspec import Struct

from ledger.errors import InputError

# A tab or an end of line at the head of a cell is told by `FORMULA`.
_AFTER_A_PART = re.compile(r"((?:^[;|]|(?<=.)[;|\t\r\n])\s*)(?=[=+@-])", re.DOTALL)
_FIGURE = re.compile(r"-?\d{1,15}(?:\.\d+)?", re.ASCII)
FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the beginning of a formula."""


class Sheet(Struct, frozen=True):
    """A table with its heads."""

    heads: tuple[str, ...]
    """Column heads."""
    rows: tuple[tuple[str, ...], ...]
    """Cells, as wide as the heads."""


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula; a figure below zero is none.

    >>> harmless("=1+1"), harmless("+353 1 555 0100"), harmless("OE-001-5")
    ("'=1+1", "'+353 1 555 0100", 'OE-001-5')
    >>> harmless("so;=1+1"), harmless("-0.5"), harmless("-1+1")
    ("so;'=1+1", '-0.5', "'-1+1")
    >>> harmless(";=1+1"), harmless("|  @SUM(1)")
    (";'=1+1", "|  '@SUM(1)")
    """
    if _FIGURE.fullmatch(cell):
        return cell
    # Where a semicolon or a tab parts the cells, each of them begins one.
    cell = _AFTER_A_PART.sub(r"\1'", cell)
    return f"'{cell}" if cell.lstrip().startswith(FORMULA) or cell.startswith(FORMULA) else cell


def csv_text(sheet: Sheet) -> str:
    """Return a table as CSV (RFC 4180: CRLF at the end of every line)."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerow(sheet.heads)
    for row in sheet.rows:
        if len(row) != len(sheet.heads):
            raise ValueError(f"a row of {len(row)} cells under {len(sheet.heads)} heads")
        writer.writerow([harmless(cell) for cell in row])
    return out.getvalue()


def spreadsheet(sheet: Sheet, name: str) -> bytes:
    """Return a table as the bytes of a spreadsheet's file, by the ending of its name.

    CSV is in UTF-8 with a mark, by which spreadsheets know its letters.

    Raises:
        InputError: A workbook is asked for, and openpyxl is not installed.
    """
    if name.lower().endswith(".xlsx"):
        return _workbook(sheet)
    return csv_text(sheet).encode("utf-8-sig")


def _is_code(text: str) -> bool:
    """Return whether figures are no number: noughts at their head would be lost."""
    return len(text) > 1 and text.startswith("0") and "." not in text


def _workbook(sheet: Sheet) -> bytes:
    try:
        from openpyxl import Workbook
    except ImportError as error:
        raise InputError(
            "To write a workbook, pottle needs openpyxl.",
            "Install pottle[xlsx], or give a name that ends in .csv.",
        ) from error
    book = Workbook()
    page = book.active
    for line, row in enumerate((sheet.heads, *sheet.rows), 1):
        for column, text in enumerate(row, 1):
            cell = page.cell(line, column)
            if line > 1 and _FIGURE.fullmatch(text) and not _is_code(text):
                cell.value = float(text) if "." in text else int(text)
            elif text:
                cell.value = text
                # Told to be text, or a cell that begins as a formula does would be run.
                cell.data_type = "s"
    page.freeze_panes = "A2"
    out = BytesIO()
    book.save(out)
    return out.getvalue()
