"""The packet for an inspector: records, spirit, upkeep, complaints, all entries, in one file.

Guarantees: the contents name the page on which each part begins; every part begins a page of its
own; the seal stands on every page. Refuses: names too long for a page.
"""

from collections.abc import Iterable, Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.glass.spirit import spirit_sections
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.page import SIZES, write_paper
from reports.pdf.kit.rows import Cell, Column, Piece, table
from reports.pdf.kit.strips import Section, paginate
from reports.pdf.kit.styles import CELL, GUTTER, NOTE, VALUE
from reports.pdf.lots.record import sections_of
from reports.pdf.lots.record_tables import people
from reports.views.evidence import EntryRow, PacketView

CONTENTS = (
    Column("Part", 150 * mm),
    Column("Page", 30 * mm + GUTTER, "right"),
)
"""The table of contents."""
ENTRY_COLUMNS = (
    Column("Entry", 12 * mm, "right"),
    Column("When", 30 * mm),
    Column("Lot", 28 * mm),
    Column("What", 24 * mm),
    Column("As written", 76 * mm),
    Column("By", 13 * mm),
)
"""Entries as they were written."""
INTRODUCTION = (
    "This is what the book holds of it, gathered for who asks. Nothing is left out that was "
    "written and struck; what was corrected stands beside its correction.",
    "The seal at the foot of each page names the book as it stood: with it the same pages can be "
    "made again, and a change to any entry before it would show.",
    "It claims no compliance with any law; local law says what must be kept and for how long.",
)
"""What stands below the contents."""

Part = tuple[str, Sequence[Section]]
"""The title of a part and its sections."""


def packet_paper(view: PacketView, out: BinaryIO) -> None:
    """Write a packet as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    heading = Heading("Packet", view.code, view.title)
    parts = _parts(view)
    body = SIZES[view.frame.size].body
    pages = [len(paginate(sections, body)) for _, sections in parts]
    # The contents take as many pages with numbers in them as without.
    ahead = len(paginate(_contents(view, heading, parts, [0] * len(parts)), body))
    begins = [1 + ahead + sum(pages[:number]) for number in range(len(parts))]
    contents = _contents(view, heading, parts, begins)
    write_paper(out, view.frame, heading, contents, *(sections for _, sections in parts))


def _contents(
    view: PacketView, heading: Heading, parts: Sequence[Part], begins: Sequence[int]
) -> list[Section]:
    rows = (
        [(Piece(title, VALUE),), (Piece(str(page)),)]
        for (title, _), page in zip(parts, begins, strict=True)
    )
    return [
        paper_head(view.frame, heading),
        table("Contents", CONTENTS, rows),
        *sentences(INTRODUCTION),
    ]


def _parts(view: PacketView) -> list[Part]:
    """Lay out every part with its title."""
    spirit = f"Spirit account, {view.spirit.period}"
    return [
        *((f"{each.paper} {each.lot}, {each.title}", sections_of(each)) for each in view.records),
        (spirit, spirit_sections(view.spirit, spirit)),
        ("Cleaning and instruments", [_entries("Cleaning and instruments", view.upkeep)]),
        ("Complaints and recalls", [_entries("Complaints and recalls", view.complaints)]),
        (ALL, [_entries(ALL, view.entries)]),
        ("People", [people(view.people)]),
    ]


ALL = "All entries as written"
"""The part that holds everything."""


def _entries(title: str, rows: Iterable[EntryRow]) -> Section:
    return table(title, ENTRY_COLUMNS, (_cells(row) for row in rows))


def _cells(row: EntryRow) -> list[Cell]:
    """Set one entry; its notes are never struck."""
    told = [Piece(t, CELL, row.struck) for t in (row.entry, row.when, row.lot, row.what)]
    words = Piece(row.words, CELL, row.struck)
    notes = (Piece(note, NOTE) for note in row.notes)
    return [*((piece,) for piece in told), (words, *notes), (Piece(row.by, CELL, row.struck),)]
