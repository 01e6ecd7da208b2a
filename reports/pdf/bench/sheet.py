"""The batch sheet: what a batch is made from at the bench, with ruled blanks.

Guarantees: one page while the blanks can be as high as handwriting needs; every blank is ruled and
labelled, every row has its code, and the sheet's number is at the head in letters and as a symbol.
"""

from collections.abc import Sequence
from itertools import zip_longest
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, SIZES, WIDTH, write_paper
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import CELL, RULE, SECTION, SMALL, VALUE
from reports.pdf.kit.text import wrap
from reports.views.bench import BatchSheetView, SheetRow

CODE_WIDTH = 11 * mm
"""Width for the code of a row."""
WORDS_WIDTH = 58 * mm
"""Width for what is to be done."""
BLANKS_LEFT = SIDE + CODE_WIDTH + WORDS_WIDTH + 3 * mm
"""Where the blanks begin."""
BETWEEN = 2.5 * mm
"""Between two blanks."""
ROW_HIGHEST, ROW_LOWEST = 15 * mm, 9.5 * mm
"""Height of a row of blanks: room to write in, and the least that still is."""
WIDE = {"lot": 1.7, "day, time": 1.6, "begun": 1.6, "ended": 1.6, "what": 1.7, "words": 4.0}
"""Blanks wider than others, in widths of one."""
BY = 0.8
"""Width of the blank for initials."""


def batch_sheet(view: BatchSheetView, out: BinaryIO) -> None:
    """Write the batch sheet as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    write_paper(out, view.frame, heading_of(view), _fitting(view))


def heading_of(view: BatchSheetView) -> Heading:
    """Return what the sheet is."""
    return Heading("Batch sheet", view.number, view.title, symbol=view.number)


def _fitting(view: BatchSheetView) -> list[Section]:
    """Lay the sheet out with rows as high as one page allows."""
    height, body = ROW_HIGHEST, SIZES[view.frame.size].body
    while True:
        sections = _sections(view, height)
        total = sum(s.head.height + sum(row.height for row in s.rows) for s in sections)
        if total <= body or height <= ROW_LOWEST:
            return sections
        # Half a millimetre at a time, so that no more room to write is given up than the page asks.
        height = max(ROW_LOWEST, height - 0.5 * mm)


def _sections(view: BatchSheetView, height: float) -> list[Section]:
    return [
        paper_head(view.frame, heading_of(view)),
        Section(_facts(view), Strip(0)),
        _table("What goes in", view.additions, height),
        _table("What is done", view.steps, height),
        Section(_end(view), Strip(0)),
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
                marks.append(Words(left + 20 * mm, y + VALUE.drop, fact[1], VALUE))
        y += CELL.leading
    return Strip(y, tuple(marks))


def _table(title: str, rows: Sequence[SheetRow], height: float) -> Section:
    return Section(
        title_strip(title),
        title_strip(f"{title} (continued)"),
        tuple(_row(row, height) for row in rows),
    )


def _row(row: SheetRow, least: float) -> Strip:
    """Lay out a row: its code, what to do, and its blanks with their labels below the rules."""
    marks: list[Mark] = [Words(SIDE, 1.2 * mm + SECTION.drop, row.code, SECTION)]
    left, y = SIDE + CODE_WIDTH, 1.2 * mm
    if row.act:
        marks.append(Words(left, y + VALUE.drop, row.act, VALUE))
        y += VALUE.leading
    for line in wrap(row.words, CELL, lambda _: WORDS_WIDTH) if row.words else ():
        marks.append(Words(left, y + CELL.drop, line, CELL))
        y += CELL.leading
    height = max(least, y + 1.2 * mm)
    base = height - SMALL.leading - 1 * mm
    for x, width, label in _places(row.blanks):
        marks.append(Rule(x, base, x + width, base, RULE))
        marks.append(Words(x, base + 0.4 * mm + SMALL.drop, label, SMALL))
    marks.append(Rule(SIDE, height, WIDTH - SIDE, height, RULE))
    return Strip(height, tuple(marks))


def _places(blanks: Sequence[str]) -> list[tuple[float, float, str]]:
    """Share the room out over blanks: left edge, width and label of each."""
    shares = [BY if label == "by" else WIDE.get(label, 1.0) for label in blanks]
    room = WIDTH - SIDE - BLANKS_LEFT - BETWEEN * (len(blanks) - 1)
    places, x = [], BLANKS_LEFT
    for label, share in zip(blanks, shares, strict=True):
        width = room * share / sum(shares)
        places.append((x, width, label))
        x += width + BETWEEN
    return places


def _end(view: BatchSheetView) -> Strip:
    marks: list[Mark] = []
    y = 2 * mm
    for text in (*view.cautions, view.how_to_type):
        for line in wrap(text, CELL, lambda _: INNER):
            marks.append(Words(SIDE, y + CELL.drop, line, CELL))
            y += CELL.leading
    y += 9 * mm
    for label, x, width in (("Checked by", 0.0, 80 * mm), ("Date", 90 * mm, 40 * mm)):
        marks.append(Rule(SIDE + x, y, SIDE + x + width, y, RULE))
        marks.append(Words(SIDE + x, y + 0.4 * mm + SMALL.drop, label, SMALL))
    return Strip(y + SMALL.leading + 1 * mm, tuple(marks))
