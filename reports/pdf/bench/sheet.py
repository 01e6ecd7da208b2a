"""The batch sheet: what a batch is made from at the bench, with boxes to write in.

Guarantees: the order of the work from top to bottom; every row has its code, a box to tick and
boxes high enough for handwriting, each labelled; cautions stand above everything that is done, and
the sheet's number at the head in letters and as a symbol.
"""

from collections.abc import Sequence
from itertools import zip_longest
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.boxed import boxed
from reports.pdf.kit.fonts import BOLD
from reports.pdf.kit.head import NOTHING, paper_head
from reports.pdf.kit.marks import Box, Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, WIDTH, write_paper
from reports.pdf.kit.rows import again_strip, title_strip
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import CELL, GUTTER, RULE, SECTION, SMALL, VALUE
from reports.pdf.kit.text import Face, width_of, wrap
from reports.views.bench import BatchSheetView, SheetRow

TARGET = Face(BOLD, 14, 1.2)
"""How much is asked for: read from a step away, with wet hands."""
TICK = 4 * mm
"""Side of the box to tick."""
CODE_LEFT = SIDE + TICK + 2 * mm
"""Where the code of a row stands."""
WORDS_LEFT = CODE_LEFT + 11 * mm
"""Where its words begin."""
BLANKS_LEFT = SIDE + 80 * mm
"""Where the boxes begin."""
WORDS_WIDTH = BLANKS_LEFT - WORDS_LEFT - GUTTER
"""Width for what is to be done."""
BETWEEN = 1 * mm
"""Between two boxes."""
BOX = 9 * mm
"""Height of a box to write in."""
ABOVE = 1.5 * mm
"""Between two rows."""
WIDE = {
    "lot": 1.9,
    "day, time": 1.6,
    "begun": 1.6,
    "ended": 1.6,
    "what": 1.9,
    "words": 4.0,
    "count x size": 1.5,
    "bottles lot": 1.4,
    "caps lot": 1.2,
    "work min": 1.2,
    "waste mL": 1.1,
}
"""Boxes wider than others, in widths of one."""
SIGNED = ("by", "weighed", "checked")
"""Boxes for initials."""
INITIALS = 1.0
"""Their width."""
LABEL_PAD = 0.7 * mm
"""Beside the label of a box."""
DEVIATION = 18 * mm
"""Height of the box for what did not go as it should."""
TO_SIGN = 8 * mm
"""Height to sign in."""


def batch_sheet(view: BatchSheetView, out: BinaryIO) -> None:
    """Write the batch sheet as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    write_paper(out, view.frame, heading_of(view), sections_of(view))


def heading_of(view: BatchSheetView) -> Heading:
    """Return what the sheet is."""
    return Heading("Batch sheet", view.number, view.title, across=view.across, symbol=view.number)


def sections_of(view: BatchSheetView) -> list[Section]:
    """Lay out the parts of the sheet in order."""
    return [
        paper_head(view.frame, heading_of(view)),
        Section(_facts(view), NOTHING),
        *([boxed("Cautions", view.cautions)] if view.cautions else []),
        _table("What goes in and what is done, in this order", view.rows),
        _end(view),
    ]


def _facts(view: BatchSheetView) -> Strip:
    half = (len(view.facts) + 1) // 2
    marks: list[Mark] = []
    y = 0.0
    columns = ((SIDE, view.facts[:half]), (SIDE + INNER / 2, view.facts[half:]))
    for pair in zip_longest(*(rows for _, rows in columns)):
        for (left, _), fact in zip(columns, pair, strict=True):
            if fact:
                marks.append(Words(left, y + CELL.drop, fact[0], CELL))
                marks.append(Words(left + 22 * mm, y + VALUE.drop, fact[1], VALUE))
        y += CELL.leading
    return Strip(y, tuple(marks))


def _table(title: str, rows: Sequence[SheetRow]) -> Section:
    return Section(title_strip(title), again_strip(title), tuple(_row(row) for row in rows))


def _row(row: SheetRow) -> Strip:
    """Lay out a row: a box to tick, its code, what to do, and its boxes with their labels."""
    marks: list[Mark] = [
        Box(SIDE, ABOVE + 1 * mm, TICK, TICK, None, RULE),
        Words(CODE_LEFT, ABOVE + SECTION.drop, row.code, SECTION),
    ]
    room = WORDS_WIDTH - (width_of(row.target, TARGET) + GUTTER if row.target else 0)
    y = ABOVE + 1 * mm
    for line in wrap(row.act, VALUE, lambda _: room) if row.act else ():
        marks.append(Words(WORDS_LEFT, y + VALUE.drop, line, VALUE))
        y += VALUE.leading
    if row.target:
        right = BLANKS_LEFT - GUTTER
        marks.append(Words(right, ABOVE + TARGET.drop, row.target, TARGET, "right"))
        y = max(y, ABOVE + TARGET.leading)
    for line in wrap(row.words, CELL, lambda _: WORDS_WIDTH) if row.words else ():
        marks.append(Words(WORDS_LEFT, y + CELL.drop, line, CELL))
        y += CELL.leading
    for x, width, label in _places(row.blanks):
        marks.append(Box(x, ABOVE, width, BOX, None, RULE))
        marks.append(Words(x + LABEL_PAD, ABOVE + SMALL.drop, label, SMALL))
    return Strip(max(ABOVE + BOX, y) + ABOVE, tuple(marks))


def _places(blanks: Sequence[str]) -> list[tuple[float, float, str]]:
    """Share the room out over boxes: left edge, width and label of each."""
    room = WIDTH - SIDE - BLANKS_LEFT - BETWEEN * (len(blanks) - 1)
    places, x = [], BLANKS_LEFT
    for label, width in zip(blanks, _widths(blanks, room), strict=True):
        places.append((x, width, label))
        x += width + BETWEEN
    return places


def _widths(blanks: Sequence[str], room: float) -> list[float]:
    """Share a width out by how wide each box is among others, none less than its label."""
    shares = [INITIALS if label in SIGNED else WIDE.get(label, 1.0) for label in blanks]
    widths = [room * share / sum(shares) for share in shares]
    least = [width_of(label, SMALL) + 2 * LABEL_PAD for label in blanks]
    lacking = sum(max(low - width, 0.0) for low, width in zip(least, widths, strict=True))
    if not lacking or sum(least) > room:
        return widths
    # What the narrow ones lack the others give, each by what it has to spare.
    spare = sum(max(width - low, 0.0) for low, width in zip(least, widths, strict=True))
    given = lacking / spare
    return [
        max(low, width - given * max(width - low, 0.0))
        for low, width in zip(least, widths, strict=True)
    ]


def _end(view: BatchSheetView) -> Section:
    """Lay out the box for deviations, how to type it in, and the lines to sign on.

    They never begin a page: the last two rows come along.
    """
    top = 2 * ABOVE
    marks: list[Mark] = [Box(SIDE, top, INNER, DEVIATION, None, RULE)]
    marks.append(Words(SIDE + 1 * mm, top + VALUE.drop, "What did not go as it should", VALUE))
    told = "what, at which row, why, and who let it be"
    marks.append(Words(WIDTH - SIDE - 1 * mm, top + VALUE.drop, told, SMALL, "right"))
    y = top + DEVIATION + 1 * mm
    for line in wrap(view.how_to_type, CELL, lambda _: INNER):
        marks.append(Words(SIDE, y + CELL.drop, line, CELL))
        y += CELL.leading
    y += TO_SIGN
    for label, x, width in (
        ("Made by", 0.0, 55 * mm),
        ("Date", 58 * mm, 30 * mm),
        ("Checked by", 92 * mm, 55 * mm),
        ("Date", 150 * mm, 30 * mm),
    ):
        marks.append(Rule(SIDE + x, y, SIDE + x + width, y, RULE))
        marks.append(Words(SIDE + x, y + 0.4 * mm + SMALL.drop, label, SMALL))
    return Section(Strip(y + SMALL.leading + 1 * mm, tuple(marks)), NOTHING, tied=True)
