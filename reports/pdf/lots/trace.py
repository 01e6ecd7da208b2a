"""The trace of one lot on paper.

Guarantees: every line of the view, in its order, indented by its steps; column heads on every page;
the seal at the foot.
"""

from collections.abc import Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.page import write_paper
from reports.pdf.kit.rows import Cell, Column, Piece, table
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import CELL, VALUE
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
    heading = Heading("Trace", view.lot, view.title, view.status, symbol=view.lot)
    sections = [
        paper_head(view.frame, heading),
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
    write_paper(out, view.frame, heading, sections)
