"""The parts of a batch record around its tables: facts, cautions, signatures.

Guarantees: facts and cautions stand before everything else; nobody signs a page that says nothing.
"""

from itertools import zip_longest

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Mark, Rule, Words, shifted
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.rows import Cell, Column, Piece, row_strips
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import GUTTER, RULE, SMALL, STRONG, VALUE
from reports.views.lots import RecordView

FACT_COLUMNS = (
    Column("", 26 * mm),
    Column("", 65.5 * mm),
    Column("", 26 * mm),
    Column("", 65.5 * mm),
)
"""The head facts, two side by side."""

SIGNED = ("Made by", "Checked by", "Reviewed by", "Released by")
"""Who signs."""

SIGN_HEIGHT = 12 * mm
"""Height to sign in."""

BOX_PAD = 3 * mm
"""Inside the box of cautions, left and right."""


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
    rows: list[Cell] = [(Piece("Cautions", STRONG),), *((Piece(c),) for c in view.cautions)]
    strips = [
        Strip(strip.height, (*shifted(strip.marks, BOX_PAD), *_sides(strip.height)))
        for row in rows
        for strip in row_strips(inside, [row], 0)
    ]
    below = strips[-1].height
    bottom = Strip(below, (*strips[-1].marks, Rule(SIDE, below, WIDTH - SIDE, below, RULE)))
    lid = Rule(SIDE, 0, WIDTH - SIDE, 0, RULE)
    top = stacked([Strip(3 * mm), Strip(strips[0].height, (*strips[0].marks, lid))])
    return Section(top, NOTHING, (*strips[1:-1], bottom), whole=True)


def _sides(height: float) -> tuple[Rule, Rule]:
    """Draw the sides of a box."""
    left, right = SIDE, WIDTH - SIDE
    return Rule(left, 0, left, height, RULE), Rule(right, 0, right, height, RULE)


def signatures() -> Section:
    """Lay out four lines to sign on, two side by side, each with its date; kept together."""
    marks: list[Mark] = []
    half, date = INNER / 2, 26 * mm
    for number, label in enumerate(SIGNED):
        row, column = divmod(number, 2)
        left, y = SIDE + column * (half + GUTTER / 2), (row + 1) * SIGN_HEIGHT
        end = left + half - GUTTER / 2
        for x, to_x, words in ((left, end - date - GUTTER, label), (end - date, end, "Date")):
            marks.append(Rule(x, y, to_x, y, RULE))
            marks.append(Words(x, y + 0.5 * mm + SMALL.drop, words, SMALL))
    return Section(Strip(2 * SIGN_HEIGHT + 5 * mm, tuple(marks)), NOTHING, tied=True)
