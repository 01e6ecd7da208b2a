"""The trace of one lot on paper.

Guarantees: every line of the view, in its order, indented by its steps with lines down beside them;
where a page begins within a lot, its heads and that lot stand above.
"""

from collections.abc import Iterator, Sequence
from typing import BinaryIO

from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.page import INNER, SIDE, write_paper
from reports.pdf.kit.rows import Cell, Column, Piece, table
from reports.pdf.kit.strips import NONE, Section, Strip
from reports.pdf.kit.styles import CELL, LEADING, NOTE, RULE, VALUE
from reports.pdf.kit.text import fitting, width_of
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
    if not rows:
        return sentences([nothing])
    section = table(title, COLUMNS, map(_cells, rows))
    # A row that no page holds is cut in two; the rows on paper are then not those of the view.
    if len(section.rows) != len(rows):
        return [section]
    ruled = tuple(
        Strip(strip.height, (*_rules(row, strip.height), *strip.marks))
        for row, strip in zip(rows, section.rows, strict=True)
    )
    return [replace(section, rows=ruled, within=tuple(_within(rows)))]


def _rules(row: TraceRow, height: float) -> Iterator[Rule]:
    """Yield a line down for each step that a row stands below."""
    step = width_of(STEP, CELL)
    for depth in range(1, min(row.depth, DEEPEST_INDENT)):
        x = SIDE + (depth - 0.7) * step
        yield Rule(x, 0, x, height, RULE)


def _within(rows: Sequence[TraceRow]) -> Iterator[Strip]:
    """Yield, for each row, the lots that it stands below, to be told where it begins a page."""
    path: list[str] = []
    for row in rows:
        del path[row.depth - 1 :]
        told = f"Within {', in '.join(reversed(path))}"
        yield (
            Strip(LEADING, (Words(SIDE, NOTE.drop, fitting(told, NOTE, INNER), NOTE),))
            if path
            else NONE
        )
        if row.lot:
            path.append(row.lot)


def trace_paper(view: TraceView, out: BinaryIO) -> None:
    """Write the trace of a lot as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    heading = Heading("Trace", view.lot, view.title, symbol=view.lot)
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
