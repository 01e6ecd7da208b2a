"""The parts of a batch record around its tables: head, facts, cautions, signatures.

Guarantees: lot code, title, facts and cautions stand before everything else.
"""

from itertools import zip_longest

from reportlab.lib.units import mm

from reports.pdf.kit.fonts import BOLD
from reports.pdf.kit.marks import Mark, Rule, Symbol, Words, shifted
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.rows import Cell, Column, Piece, row_strips
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import (
    ADDRESS,
    BOLD_RULE,
    COLUMN,
    GUTTER,
    HOUSE,
    KIND,
    LOT,
    THIN,
    TITLE,
    VALUE,
)
from reports.pdf.kit.text import Face, wrap
from reports.views.lots import RecordView

SYMBOL = 32 * mm
"""Side of the square for the QR symbol at the head."""

OVER = 3 * mm
"""How far the symbol's own quiet zone reaches into the margins."""

NOTHING = Strip(0)
"""No strip."""

FACT_COLUMNS = (
    Column("", 26 * mm),
    Column("", 65.5 * mm),
    Column("", 26 * mm),
    Column("", 65.5 * mm),
)
"""The head facts, two side by side."""

SIGNED = (("Reviewed by", 0, 110 * mm), ("Date", 120 * mm, 60 * mm))
"""What is signed: label, left edge from the margin, length of the line."""

BOX_PAD = 3 * mm
"""Inside the box of cautions, left and right."""

BOX_HEAD = Face(BOLD, 8.5)
"""The head of the box of cautions."""


def head(view: RecordView) -> Section:
    """Lay out the head: house, lot code with its QR symbol, title."""
    blocks: list[tuple[str, Face, float]] = [
        (view.house_name, HOUSE, 0),
        (view.house_address or "", ADDRESS, 0),
        (view.paper, KIND, 3 * mm),
        (view.lot, LOT, 0),
        (view.title, TITLE, 0),
    ]
    marks: list[Mark] = [Symbol(WIDTH - SIDE - SYMBOL + OVER, SYMBOL - OVER, view.lot, SYMBOL)]
    y = 0.0
    for text, face, above in blocks:
        y += above
        for line in wrap(text, face, lambda _: INNER - SYMBOL - GUTTER) if text else ():
            marks.append(Words(SIDE, y + face.drop, line, face))
            y += face.leading
    y = max(y, SYMBOL - OVER) + 1 * mm
    marks.append(Rule(SIDE, y, WIDTH - SIDE, y, BOLD_RULE))
    return Section(Strip(y + 2 * mm, tuple(marks)), NOTHING)


def facts(view: RecordView) -> Section:
    """Lay out the head facts, down the left half and then down the right one."""
    half = (len(view.facts) + 1) // 2
    pairs = zip_longest(view.facts[:half], view.facts[half:], fillvalue=("", ""))
    strips = [
        strip
        for (label, value), (other, its_value) in pairs
        for strip in row_strips(
            FACT_COLUMNS,
            [
                (Piece(label),),
                (Piece(value, VALUE),),
                (Piece(other),),
                (Piece(its_value, VALUE),),
            ],
            0,
        )
    ]
    return Section(NOTHING, NOTHING, tuple(strips), whole=True)


def cautions(view: RecordView) -> Section:
    """Lay out the cautions in a ruled box; no cautions, no box."""
    if not view.cautions:
        return Section(NOTHING, NOTHING)
    # The width of a column includes a gutter to the next.
    inside = [Column("", INNER - 2 * BOX_PAD + GUTTER)]
    rows: list[Cell] = [(Piece("Cautions", BOX_HEAD),), *((Piece(c),) for c in view.cautions)]
    strips = [
        Strip(strip.height, (*shifted(strip.marks, BOX_PAD), *_sides(strip.height)))
        for row in rows
        for strip in row_strips(inside, [row], 0)
    ]
    below = strips[-1].height
    bottom = Strip(below, (*strips[-1].marks, Rule(SIDE, below, WIDTH - SIDE, below, THIN)))
    lid = Rule(SIDE, 0, WIDTH - SIDE, 0, THIN)
    top = stacked([Strip(3 * mm), Strip(strips[0].height, (*strips[0].marks, lid))])
    return Section(top, NOTHING, (*strips[1:-1], bottom), whole=True)


def _sides(height: float) -> tuple[Rule, Rule]:
    """Draw the sides of a box."""
    left, right = SIDE, WIDTH - SIDE
    return Rule(left, 0, left, height, THIN), Rule(right, 0, right, height, THIN)


def signatures() -> Section:
    """Lay out the lines to sign on."""
    lines: list[Mark] = []
    y = 18 * mm
    for label, left, width in SIGNED:
        lines.append(Rule(SIDE + left, y, SIDE + left + width, y, THIN))
        lines.append(Words(SIDE + left, y + 1 * mm + COLUMN.drop, label, COLUMN))
    return Section(Strip(y + 6 * mm, tuple(lines)), NOTHING)
