"""The trace of one lot on paper.

Guarantees: every line of the view, in its order, indented by its steps; column heads on every page;
the seal at the foot.
"""

from collections.abc import Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.page import HEIGHT, foot, write_pages
from reports.pdf.kit.rows import Cell, Column, Piece, table
from reports.pdf.kit.strips import Section, draw_strips, paginate
from reports.pdf.kit.styles import BODY, CELL, TOP, VALUE
from reports.views.lots import TraceRow, TraceView

COLUMNS = (
    Column("Steps and lot", 46 * mm),
    Column("What, or who has it", 60 * mm),
    Column("Amount", 22 * mm, "right"),
    Column("Share", 25 * mm, "right"),
    Column("Status, or since", 30 * mm),
)
"""The table of a trace."""
DEEPEST_INDENT = 8
"""Steps that are still shown by indenting."""
STEP = "\N{NO-BREAK SPACE}" * 3
"""The indent of one step."""
AT_END = "–\N{NO-BREAK SPACE}"
"""What stands before what became of goods, in place of a step."""


def _cells(row: TraceRow) -> list[Cell]:
    indent = STEP * (min(row.depth, DEEPEST_INDENT) - 1)
    if not row.lot:
        face = VALUE if row.is_held else CELL
        return [
            (Piece(f"{indent}{AT_END}{row.became}"),),
            (Piece(row.what, face),),
            (Piece(row.amount, face),),
            (Piece(row.share),),
            (Piece(row.status),),
        ]
    return [
        (Piece(f"{indent}{row.depth}\N{NO-BREAK SPACE}{row.lot}", VALUE),),
        (Piece(row.what),),
        (Piece(row.amount),),
        (Piece(row.share),),
        (Piece(row.status),),
    ]


def _part(title: str, rows: Sequence[TraceRow] | None, nothing: str) -> list[Section]:
    if rows is None:
        return []
    return [table(title, COLUMNS, map(_cells, rows))] if rows else sentences([nothing])


def trace_paper(view: TraceView, out: BinaryIO) -> None:
    """Write the trace of a lot as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    sections = [
        paper_head(view.house_name, "Trace", view.lot, view.title),
        *sentences(view.notes),
        *_part(
            f"Made of (share: how much of it is in {view.lot})", view.back, "Made of no other lot."
        ),
        *_part(
            f"What became of it (share: how much of {view.lot} is in it)",
            view.forward,
            "Went nowhere yet.",
        ),
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
