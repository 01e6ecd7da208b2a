"""Tables as CSV: one row of heads, then one row a line.

Guarantees: a cell that a spreadsheet would take for a formula is made harmless; every row is as
wide as the heads. Refuses: rows of another width.
"""

import csv
import re
from io import StringIO

from msgspec import Struct

_AFTER_A_PART = re.compile(r"(?<=.)([;|\t\r\n]\s*)(?=[=+@-])", re.DOTALL)
FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the beginning of a formula."""


class Sheet(Struct, frozen=True):
    """A table with its heads."""

    heads: tuple[str, ...]
    """Column heads."""
    rows: tuple[tuple[str, ...], ...]
    """Cells, as wide as the heads."""


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    >>> harmless("=1+1"), harmless("+353 1 555 0100"), harmless("OE-001-5")
    ("'=1+1", "'+353 1 555 0100", 'OE-001-5')
    >>> harmless("so;=1+1")
    "so;'=1+1"
    """
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
