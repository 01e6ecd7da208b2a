"""The head of a paper, and sentences across the page.

Guarantees: the house, the kind of paper, what it is about and what that is stand before everything
else, with a QR symbol of the lot where there is one.
"""

from collections.abc import Iterable

from reportlab.lib.units import mm

from reports.kit.frame import Frame, Heading
from reports.pdf.kit.marks import Mark, Rule, Symbol, Words
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import ADDRESS, CELL, GUTTER, HOUSE, KIND, LOT, RULE, TITLE
from reports.pdf.kit.text import Face, wrap

SYMBOL = 26 * mm
"""Side of the square for the QR symbol at the head."""

OVER = 2.5 * mm
"""How far the symbol's own quiet zone reaches into the margins."""

NOTHING = Strip(0)
"""No strip."""


def paper_head(frame: Frame, heading: Heading) -> Section:
    """Lay out the head: house, kind of paper, code, title, and its symbol."""
    room = INNER - SYMBOL - GUTTER if heading.symbol else INNER
    marks: list[Mark] = []
    if heading.symbol:
        left = WIDTH - SIDE - SYMBOL + OVER
        marks.append(Symbol(left, SYMBOL - OVER, heading.symbol, SYMBOL))
    y = 0.0
    for text, face, above in (
        (frame.house_name, HOUSE, 0.0),
        (frame.house_address or "", ADDRESS, 0.0),
        (heading.kind, KIND, 2 * mm),
        (heading.code, LOT, 0.0),
        (heading.product, TITLE, 0.0),
    ):
        y += above
        for line in wrap(text, face, lambda _: room) if text else ():
            marks.append(Words(SIDE, y + face.drop, line, face))
            y += face.leading
    y = max(y, SYMBOL - OVER if heading.symbol else 0.0) + 1 * mm
    marks.append(Rule(SIDE, y, WIDTH - SIDE, y, RULE))
    return Section(Strip(y + 2 * mm, tuple(marks)), NOTHING)


def sentences(texts: Iterable[str], face: Face = CELL) -> list[Section]:
    """Lay out sentences, each on lines of its own that stay on one page."""
    sections = []
    for text in texts:
        lines = wrap(text, face, lambda _: INNER)
        marks = tuple(
            Words(SIDE, 1 * mm + number * face.leading + face.drop, line, face)
            for number, line in enumerate(lines)
        )
        sections.append(Section(Strip(2 * mm + face.leading * len(lines), marks), NOTHING))
    return sections
