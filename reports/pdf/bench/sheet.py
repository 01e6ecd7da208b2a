"""The batch sheet: what a batch is made from at the bench, with ruled blanks.

Guarantees: one page while the blanks can be as high as handwriting needs; every blank is ruled and
labelled, every row has its code, and the sheet's number is at the head in letters and as a symbol.
"""

import re
from collections.abc import Sequence
from itertools import zip_longest
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.pdf.kit.fonts import BOLD, MEDIUM, REGULAR
from reports.pdf.kit.marks import Mark, Rule, Symbol, Words
from reports.pdf.kit.page import HEIGHT, INNER, SIDE, WIDTH, foot, write_pages
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, draw_strips, paginate
from reports.pdf.kit.styles import BODY, BOLD_RULE, CELL, HAIR, HOUSE, KIND, THIN, TITLE, TOP, VALUE
from reports.pdf.kit.text import Face, wrap
from reports.views.bench import BatchSheetView, SheetRow

NUMBER = Face(BOLD, 20)
"""The sheet's number."""
CODE = Face(BOLD, 10)
"""The code of a row."""
ACT = Face(MEDIUM, 9)
"""What is done."""
SAYS = Face(REGULAR, 7.5)
"""How, with target and limits."""
LABEL = Face(REGULAR, 6.5)
"""What a blank is for."""
SYMBOL = 26 * mm
"""Side of the square for the symbol."""
OVER = 3 * mm
"""How far its quiet zone reaches into the margin."""
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
_FIGURE = re.compile(r"(\d) (?=[a-zA-Z°µ%])")
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
    pages = paginate(_fitting(view), BODY)
    write_pages(
        out,
        title=f"Batch sheet {view.number}",
        author=view.house_name,
        pages=len(pages),
        draw=lambda canvas, page: draw_strips(canvas, pages[page], HEIGHT - TOP),
        feet=lambda page: foot(f"Sheet {view.number}", view.seal, page + 1, len(pages)),
    )


def _fitting(view: BatchSheetView) -> list[Section]:
    """Lay the sheet out with rows as high as one page allows."""
    height = ROW_HIGHEST
    while True:
        sections = _sections(view, height)
        total = sum(s.head.height + sum(row.height for row in s.rows) for s in sections)
        if total <= BODY or height <= ROW_LOWEST:
            return sections
        # Half a millimetre at a time, so that no more room to write is given up than the page asks.
        height = max(ROW_LOWEST, height - 0.5 * mm)


def _sections(view: BatchSheetView, height: float) -> list[Section]:
    return [
        Section(_head(view), Strip(0)),
        Section(_facts(view), Strip(0)),
        _table("What goes in", view.additions, height),
        _table("What is done", view.steps, height),
        Section(_end(view), Strip(0)),
    ]


def _head(view: BatchSheetView) -> Strip:
    marks: list[Mark] = [Symbol(WIDTH - SIDE - SYMBOL + OVER, SYMBOL - OVER, view.number, SYMBOL)]
    y = 0.0
    for text, face in (
        (view.house_name, HOUSE),
        ("Batch sheet", KIND),
        (view.number, NUMBER),
        (view.title, TITLE),
    ):
        for line in wrap(text, face, lambda _: INNER - SYMBOL):
            marks.append(Words(SIDE, y + face.drop, line, face))
            y += face.leading
    y = max(y, SYMBOL - OVER) + 1 * mm
    marks.append(Rule(SIDE, y, WIDTH - SIDE, y, BOLD_RULE))
    return Strip(y + 1.5 * mm, tuple(marks))


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
    marks: list[Mark] = [Words(SIDE, 1.2 * mm + CODE.drop, row.code, CODE)]
    left, y = SIDE + CODE_WIDTH, 1.2 * mm
    if row.act:
        marks.append(Words(left, y + ACT.drop, row.act, ACT))
        y += ACT.leading
    for line in wrap(_held(row.words), SAYS, lambda _: WORDS_WIDTH) if row.words else ():
        marks.append(Words(left, y + SAYS.drop, line, SAYS))
        y += SAYS.leading
    height = max(least, y + 1.2 * mm)
    base = height - LABEL.leading - 1 * mm
    for x, width, label in _places(row.blanks):
        marks.append(Rule(x, base, x + width, base, THIN))
        marks.append(Words(x, base + 0.4 * mm + LABEL.drop, label, LABEL))
    marks.append(Rule(SIDE, height, WIDTH - SIDE, height, HAIR))
    return Strip(height, tuple(marks))


def _held(text: str) -> str:
    """Hold each figure and its unit together on one line.

    >>> _held("at most 6 °C") == "at most 6\N{NO-BREAK SPACE}°C"
    True
    """
    return _FIGURE.sub("\\1\N{NO-BREAK SPACE}", text)


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
        for line in wrap(text, SAYS, lambda _: INNER):
            marks.append(Words(SIDE, y + SAYS.drop, line, SAYS))
            y += SAYS.leading
    y += 9 * mm
    for label, x, width in (("Checked by", 0.0, 80 * mm), ("Date", 90 * mm, 40 * mm)):
        marks.append(Rule(SIDE + x, y, SIDE + x + width, y, THIN))
        marks.append(Words(SIDE + x, y + 0.4 * mm + LABEL.drop, label, LABEL))
    return Strip(y + LABEL.leading + 1 * mm, tuple(marks))
