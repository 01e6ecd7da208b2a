"""The trace of one lot on paper.

Guarantees: every line of the view, in its order, indented by its steps; column heads on every page;
the seal at the foot. Refuses: characters the font cannot show.
"""

from collections.abc import Iterable
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.pdf.paper_head import paper_head, sentences
from reports.pdf.rows import Cell, Column, Piece, table
from reports.pdf.sheet import HEIGHT, foot, write_pages
from reports.pdf.strips import Section, draw_strips, paginate
from reports.pdf.styles import BODY, CELL, TOP, VALUE
from reports.views import TraceRow, TraceView

COLUMNS = (
    Column("Steps and lot", 46 * mm),
    Column("What", 62 * mm),
    Column("Amount", 25 * mm, "right"),
    Column("Share", 25 * mm, "right"),
    Column("Status, last look", 25 * mm),
)
"""The table of a trace."""
DEEPEST_INDENT = 8
"""Steps that are still shown by indenting."""
STEP = "\N{NO-BREAK SPACE}" * 3
"""The indent of one step."""


def _cells(row: TraceRow) -> list[Cell]:
    indent = STEP * (min(row.depth, DEEPEST_INDENT) - 1)
    lot = f"{indent}{row.depth}\N{NO-BREAK SPACE}{row.lot}" if row.lot else ""
    return [
        (Piece(lot, VALUE if row.lot else CELL),),
        (Piece(row.what),),
        (Piece(row.amount),),
        (Piece(row.share),),
        (Piece(row.status),),
    ]


def _part(title: str, rows: Iterable[TraceRow] | None) -> list[Section]:
    return [] if rows is None else [table(title, COLUMNS, (_cells(row) for row in rows))]


def trace_paper(view: TraceView, out: BinaryIO) -> None:
    """Write the trace of a lot as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    sections = [
        paper_head(view.house_name, "Trace", view.lot, view.title),
        *sentences(view.notes),
        *_part(f"Made of (share: how much of it is in {view.lot})", view.back),
        *_part(f"What became of it (share: how much of {view.lot} is in it)", view.forward),
    ]
    pages = paginate(sections, BODY)
    lead = f"Trace of {view.lot}, printed {view.printed_at}"
    write_pages(
        out,
        title=f"Trace {view.lot}",
        author=view.house_name,
        pages=len(pages),
        draw=lambda canvas, page: draw_strips(canvas, pages[page], HEIGHT - TOP),
        feet=lambda page: foot(lead, view.seal, page + 1, len(pages)),
    )
