"""The faces and measures of the batch record.

Guarantees: every size and gap of the record is named here, in points. Refuses: to draw.
"""

from reportlab.lib.units import mm

from reports.pdf.kit.fonts import BOLD, ITALIC, MEDIUM, REGULAR
from reports.pdf.kit.page import BELOW, FOOT_ROOM, HEIGHT
from reports.pdf.kit.text import Face

TOP = 14 * mm
"""Margin above."""

BODY = HEIGHT - TOP - BELOW - FOOT_ROOM - 4 * mm
"""Height for the body of a page, in points."""

HOUSE = Face(MEDIUM, 10)
"""The maker's name."""

ADDRESS = Face(REGULAR, 8.5)
"""The maker's address."""

KIND = Face(REGULAR, 12)
"""What kind of paper it is."""

LOT = Face(BOLD, 24)
"""The lot's code at the head."""

TITLE = Face(MEDIUM, 13)
"""What the lot is."""

SECTION = Face(BOLD, 11)
"""The head of a section."""

COLUMN = Face(MEDIUM, 8)
"""The head of a column."""

CELL = Face(REGULAR, 8.5)
"""Running text in a row."""

VALUE = Face(MEDIUM, 8.5)
"""A value that is looked for."""

NOTE = Face(ITALIC, 8.5)
"""A note to a row, and the words of an empty section."""

LEADING = CELL.leading
"""From line to line in every row, in points."""

GUTTER = 3 * mm
"""Between two columns."""

PAD = 1.1 * mm
"""Above and below the words of a row."""

ABOVE_SECTION = 5.5 * mm
"""Above the head of a section."""

HAIR, THIN, BOLD_RULE = 0.25, 0.6, 1.0
"""Thickness of rules: between rows, below column heads, below the head of the paper."""
