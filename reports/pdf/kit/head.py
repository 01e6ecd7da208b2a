"""The head of a paper about one lot, and sentences across the page.

Guarantees: the house, the kind of paper, the lot's code and what it is stand before everything
else.
"""

from collections.abc import Iterable

from reportlab.lib.units import mm

from reports.pdf.kit.fonts import REGULAR
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import BOLD_RULE, HOUSE, KIND, LOT, TITLE
from reports.pdf.kit.text import Face, wrap

SENTENCE = Face(REGULAR, 11)
"""Sentences that are read aloud or acted on."""


def paper_head(house: str, kind: str, lot: str, title: str) -> Section:
    """Lay out the head: house, kind of paper, code, title."""
    marks: list[Mark] = []
    y = 0.0
    for text, face, above in (
        (house, HOUSE, 0.0),
        (kind, KIND, 4 * mm),
        (lot, LOT, 1 * mm),
        (title, TITLE, 1 * mm),
    ):
        y += above
        for line in wrap(text, face, lambda _: INNER) if text else ():
            marks.append(Words(SIDE, y + face.drop, line, face))
            y += face.leading
    y += 2 * mm
    marks.append(Rule(SIDE, y, WIDTH - SIDE, y, BOLD_RULE))
    return Section(Strip(y + 2 * mm, tuple(marks)), Strip(0))


def sentences(texts: Iterable[str], face: Face = SENTENCE) -> list[Section]:
    """Lay out sentences, each on lines of its own that stay on one page."""
    sections = []
    for text in texts:
        lines = wrap(text, face, lambda _: INNER)
        marks = tuple(
            Words(SIDE, 1 * mm + number * face.leading + face.drop, line, face)
            for number, line in enumerate(lines)
        )
        sections.append(Section(Strip(2 * mm + face.leading * len(lines), marks), Strip(0)))
    return sections
