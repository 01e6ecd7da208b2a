"""Where a lot stands, across the record of it: black where nobody may use or send it.

Guarantees: the word is large enough to be read from where the paper lies.
"""

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Box, Mark, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import CELL, LOT, RULE
from reports.pdf.kit.text import fitting, width_of, wrap
from reports.views.lots import Band

HEIGHT = 12 * mm
"""Height of the band."""
PAD = 4 * mm
"""Inside it, left and right."""
BLACK = 0.0
MOST_LINES = 2
"""Lines of words that have room beside the status."""


def band(told: Band) -> Section:
    """Lay out the band."""
    grey = BLACK if told.is_dark else None
    status = fitting(told.status, LOT, INNER - 2 * PAD)
    drop = (HEIGHT - LOT.leading) / 2 + LOT.drop
    marks: list[Mark] = [
        Box(SIDE, 0, INNER, HEIGHT, grey, RULE),
        Words(SIDE + PAD, drop, status, LOT, is_white=told.is_dark),
    ]
    left = SIDE + PAD + width_of(status, LOT) + PAD
    room = SIDE + INNER - PAD - left
    lines = wrap(told.words, CELL, lambda _: room) if told.words else []
    if len(lines) > MOST_LINES:
        lines = [lines[0], fitting(" ".join(lines[1:]), CELL, room)]
    above = (HEIGHT - CELL.leading * len(lines)) / 2
    for number, line in enumerate(lines):
        y = above + number * CELL.leading + CELL.drop
        marks.append(Words(left, y, line, CELL, is_white=told.is_dark))
    return Section(Strip(HEIGHT + 2 * mm, tuple(marks)), NOTHING)
