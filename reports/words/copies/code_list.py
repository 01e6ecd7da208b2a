"""Every table of the book for a spreadsheet, and what its columns mean.

Guarantees: the text of an entry comes back from its cell as JSON of the same value, and so as the
same canonical text; a cell that a spreadsheet would run is text.
"""

from collections.abc import Iterable, Sequence

from ledger.service.copies.export_tables import Meaning
from reports.kit.tables import Sheet

_IN_JSON = {";": "\\u003b", "|": "\\u007c"}
"""Signs that part cells somewhere, as JSON may write them: within its texts alone they occur."""


def table_sheet(columns: Sequence[str], rows: Iterable[Sequence[str]]) -> Sheet:
    """Return a table with its cells."""
    place = columns.index("body") if "body" in columns else None
    told = (
        tuple(in_json(cell) if at == place else cell for at, cell in enumerate(row)) for row in rows
    )
    return Sheet(tuple(columns), tuple(told))


def in_json(body: str) -> str:
    r"""Return the text of an entry so that no spreadsheet takes a part of it for a formula.

    >>> in_json('{"text":"so;=1+1"}')
    '{"text":"so\\u003b=1+1"}'
    """
    for sign, written in _IN_JSON.items():
        body = body.replace(sign, written)
    return body


def columns_list(meanings: Iterable[Meaning]) -> Sheet:
    """Return what every column means."""
    rows = tuple((each.table, each.column, each.words, each.unit) for each in meanings)
    return Sheet(("table", "column", "meaning", "counted_in"), rows)


def code_list(meanings: Iterable[Meaning]) -> Sheet:
    """Return the words that may stand in each column that has a list of them."""
    rows = tuple((each.table, each.column, code) for each in meanings for code in each.codes)
    return Sheet(("table", "column", "code"), rows)
