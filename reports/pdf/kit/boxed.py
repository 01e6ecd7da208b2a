"""Sentences in a ruled box, under a head of their own.

Guarantees: a box stays whole where a page can hold it, and is closed on every side.
"""

from collections.abc import Sequence

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Rule, shifted
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.rows import Cell, Column, Piece, row_strips
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import GUTTER, RULE, STRONG

PAD = 3 * mm
"""Inside the box, left and right."""


def boxed(head: str, sentences: Sequence[str]) -> Section:
    """Lay out sentences in a box; no sentences, no box."""
    if not sentences:
        return Section(NOTHING, NOTHING)
    # The width of a column includes a gutter to the next.
    inside = [Column("", INNER - 2 * PAD + GUTTER)]
    rows: list[Cell] = [(Piece(head, STRONG),), *((Piece(words),) for words in sentences)]
    strips = [
        Strip(strip.height, (*shifted(strip.marks, PAD), *_sides(strip.height)))
        for row in rows
        for strip in row_strips(inside, [row], 0)
    ]
    below = strips[-1].height
    bottom = Strip(below, (*strips[-1].marks, Rule(SIDE, below, WIDTH - SIDE, below, RULE)))
    lid = Rule(SIDE, 0, WIDTH - SIDE, 0, RULE)
    top = stacked([Strip(2 * mm), Strip(strips[0].height, (*strips[0].marks, lid))])
    return Section(top, NOTHING, (*strips[1:-1], bottom), whole=True)


def _sides(height: float) -> tuple[Rule, Rule]:
    """Draw the sides of a box."""
    left, right = SIDE, WIDTH - SIDE
    return Rule(left, 0, left, height, RULE), Rule(right, 0, right, height, RULE)
