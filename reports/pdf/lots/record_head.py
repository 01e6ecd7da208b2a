"""The parts of a batch record around its tables: facts, cautions, signatures.

Guarantees: facts and cautions stand before everything else; nobody signs a page that says nothing.
"""

from itertools import zip_longest

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import Column, Piece, row_strips
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import GUTTER, RULE, SMALL, VALUE
from reports.views.lots import RecordView

FACT_COLUMNS = (
    Column("", 26 * mm),
    Column("", 65.5 * mm),
    Column("", 26 * mm),
    Column("", 65.5 * mm),
)
"""The head facts, two side by side."""

SIGNED = ("Checked by", "Reviewed by", "Released by")
"""Who signs after who made it, or took it in."""

SIGN_HEIGHT = 12 * mm
"""Height to sign in."""


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


def signatures(first: str = "Made by") -> Section:
    """Lay out four lines to sign on, two side by side, each with its date; kept together."""
    marks: list[Mark] = []
    half, date = INNER / 2, 26 * mm
    for number, label in enumerate((first, *SIGNED)):
        row, column = divmod(number, 2)
        left, y = SIDE + column * (half + GUTTER / 2), (row + 1) * SIGN_HEIGHT
        end = left + half - GUTTER / 2
        for x, to_x, words in ((left, end - date - GUTTER, label), (end - date, end, "Date")):
            marks.append(Rule(x, y, to_x, y, RULE))
            marks.append(Words(x, y + 0.5 * mm + SMALL.drop, words, SMALL))
    return Section(Strip(2 * SIGN_HEIGHT + 5 * mm, tuple(marks)), NOTHING, tied=True)
