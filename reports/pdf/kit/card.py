"""A card on paper: its parts, each column as wide as its words ask for.

Guarantees: no table is wider than the page; figures stand near their words; a table without rows
leaves no trace.
"""

from typing import BinaryIO

from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.kit.card import Card, CardPart
from reports.pdf.kit.head import NOTHING, paper_head, sentences
from reports.pdf.kit.page import INNER, write_paper
from reports.pdf.kit.rows import Column, Piece, table, title_strip
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import CELL, COLUMN, GUTTER, VALUE
from reports.pdf.kit.text import width_of

A_HAIR, A_STEP = 0.5, 2.0
"""What the rounding of widths may take, and by how much a column is narrowed at a time; points."""
SHORT = 12
"""Rows of a table that is not shared out over two pages where one can hold it."""
WIDEST = 90 * mm
"""The most that a column asks for; longer words go on further lines."""


def card_paper(card: Card, out: BinaryIO) -> None:
    """Write a card as PDF.

    Args:
        card: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    head = paper_head(card.frame, card.heading)
    parts = [section for part in card.parts for section in _part(part)]
    write_paper(out, card.frame, card.heading, [head, *parts])


def _part(part: CardPart) -> list[Section]:
    """Lay out a part: its head with what stands first below it, its table, its sentences."""
    above = sentences(part.above)
    if part.rows:
        cells = (
            [(Piece(text, CELL if place else VALUE),) for place, text in enumerate(row)]
            for row in part.rows
        )
        drawn = replace(table(part.title, columns_of(part), cells), whole=len(part.rows) <= SHORT)
        return [*above, drawn, *sentences(part.below)]
    told = [*above, *sentences(part.below)]
    if not (part.title and told):
        return told
    return [Section(title_strip(part.title), NOTHING, (told[0].head,)), *told[1:]]


def columns_of(part: CardPart) -> list[Column]:
    """Return the columns of a part, as wide together as the page and one gutter at most."""
    asked = [
        min(
            max(
                width_of(head, COLUMN),
                *(width_of(row[place], VALUE) for row in part.rows if place < len(row)),
            )
            + GUTTER
            + A_HAIR,
            WIDEST,
        )
        for place, head in enumerate(part.heads)
    ]
    whole = INNER + GUTTER
    spare = whole - sum(asked)
    # What is left over goes to the last column, unless that is set to the right, so that figures
    # stand near their words; what is lacking is taken from those that have most.
    while spare < -A_HAIR:
        most = max(asked)
        asked = [width - min(A_STEP, -spare) if width == most else width for width in asked]
        spare = whole - sum(asked)
    if part.heads[-1] not in part.right:
        asked[-1] += max(spare, 0.0)
    return [
        Column(head, width, "right" if head in part.right else "left")
        for head, width in zip(part.heads, asked, strict=True)
    ]
