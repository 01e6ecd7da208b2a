"""The faces and measures of the whole family of papers.

Guarantees: four sizes, 7, 9, 12 and 20 pt, that can be told apart at arm's length; lines of body
text stand 4 mm apart, all else on half of that; one thickness of rule, which a second photocopy
still holds. What is larger or smaller than that says why where it stands.
"""

from reportlab.lib.units import mm

from reports.pdf.kit.fonts import BOLD, ITALIC, MEDIUM, REGULAR
from reports.pdf.kit.text import Face

LEADING = 4 * mm
"""From line to line in every row, in points."""

SMALL_PT, BODY_PT, HEAD_PT, LOT_PT = 7, 9, 12, 20
"""The sizes of all papers, in points."""


def _face(font: str, size: float, leading: float) -> Face:
    return Face(font, size, leading / size)


HOUSE = _face(MEDIUM, BODY_PT, LEADING)
"""The maker's name."""

ADDRESS = _face(REGULAR, BODY_PT, LEADING)
"""The maker's address."""

KIND = _face(REGULAR, HEAD_PT, 6 * mm)
"""What kind of paper it is."""

LOT = _face(BOLD, LOT_PT, 8 * mm)
"""The lot's code at the head."""

TITLE = _face(MEDIUM, HEAD_PT, 6 * mm)
"""What the lot is."""

SECTION = _face(BOLD, HEAD_PT, 6 * mm)
"""The head of a section."""

COLUMN = _face(MEDIUM, SMALL_PT, LEADING)
"""The head of a column."""

SMALL = _face(REGULAR, SMALL_PT, 3 * mm)
"""What is only looked for: the foot, the label of a blank."""

CELL = _face(REGULAR, BODY_PT, LEADING)
"""Running text in a row."""

VALUE = _face(MEDIUM, BODY_PT, LEADING)
"""A value that is looked for."""

STRONG = _face(BOLD, BODY_PT, LEADING)
"""The head of a box, a warning."""

NOTE = _face(ITALIC, BODY_PT, LEADING)
"""A note to a row, and the words of an empty section."""

RUNNING = _face(BOLD, HEAD_PT, 6 * mm)
"""The lot's code above each page."""

GUTTER = 3 * mm
"""Between two columns."""

PAD = 1 * mm
"""Above and below the words of a row: half a line between two rows."""

ABOVE_SECTION = 6 * mm
"""Above the head of a section."""

RULE = 0.5
"""Thickness of every rule: thinner ones break up on a second photocopy."""
