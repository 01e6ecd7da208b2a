"""Which rows the book has taken already: each entry names its file, line and row.

Guarantees: a row that was taken is known again wherever it stands in its file, by what it says;
what an entry names is hashed with it, so that nothing beside the book needs to be believed.
"""

import re
from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from ledger.domain.tables.grid import Found
from ledger.service.copies.intake.row_acts import Act
from ledger.store.engine.connections import Connection
from ledger.store.read.sheets import sheets

_SHEET = re.compile(r"(?:(.*), )?(.+) line (\d+), row ([0-9a-f]{16})")


class Taken(Struct, frozen=True):
    """A row that is in the book."""

    seq: int
    """Number of its first entry."""
    file: str
    """The file that it stood in."""
    line: int
    """Its line there."""


def sheet_of(act: Act, asked: str | None) -> str:
    """Return what an entry names as its sheet: the paper's number, if there is one, and the row.

    >>> from ledger.service.copies.intake.row_acts import Act
    >>> act = Act("note", {}, {}, "may.csv", 5, "0123456789abcdef", ("", 0, 5, 0))
    >>> sheet_of(act, "B-7")
    'B-7, may.csv line 5, row 0123456789abcdef'
    """
    paper = act.words.get("sheet") or asked
    file = act.file.replace(",", "")
    return f"{f'{paper}, ' if paper else ''}{file} line {act.line}, row {act.row}"


def taken_rows(connection: Connection) -> dict[str, Taken]:
    """Return the rows that the book has, by their hash."""
    found: dict[str, Taken] = {}
    for seq, sheet in sheets(connection):
        if told := _SHEET.fullmatch(sheet):
            found.setdefault(told[4], Taken(seq, told[2], int(told[3])))
    return found


def changed_rows(taken: Mapping[str, Taken], acts: Iterable[Act]) -> Iterator[Found]:
    """Yield the rows that were taken in other words than they have now."""
    rows = {act.row: act for act in acts}
    gone = {(row.file, row.line): row for key, row in taken.items() if key not in rows}
    for key, act in rows.items():
        old = gone.get((act.file.replace(",", ""), act.line))
        if old and key not in taken:
            yield Found(
                act.file,
                act.line,
                None,
                f"It was taken before in other words, from entry {old.seq} on.",
                f"Put the row back as it was and correct what is wrong with: pottle correct "
                f"{old.seq}; or strike out what was taken.",
            )
