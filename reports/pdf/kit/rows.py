"""Rows of a table, laid out as strips.

Guarantees: a row stands whole on one page unless it is higher than a page; words too long for their
column go on in its next line; struck words keep their text under the line.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import accumulate

from msgspec import Struct
from msgspec.structs import replace

from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, SIZES, WIDTH
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import (
    ABOVE_SECTION,
    CELL,
    COLUMN,
    GUTTER,
    LEADING,
    NOTE,
    PAD,
    RULE,
    SECTION,
)
from reports.pdf.kit.text import Align, Face, wrap


class Piece(Struct, frozen=True):
    """Words in a cell."""

    text: str
    face: Face = CELL
    struck: bool = False


HIGHEST_ROW = 0.8 * min(size.body for size in SIZES.values())
"""The highest row that stays in one piece; the rest of a page is for the heads above it."""

Cell = tuple[Piece, ...]
"""What stands in one cell, each piece on lines of its own."""


class Column(Struct, frozen=True):
    """One column; its width in points includes the gutter to the next one."""

    title: str
    width: float
    align: Align = "left"


def lefts_of(columns: Sequence[Column]) -> list[float]:
    """Give the left edge of each column."""
    return list(accumulate((column.width for column in columns[:-1]), initial=SIDE))


def _lines(cell: Cell, width: float) -> list[Piece]:
    """Break a cell into lines."""
    return [
        Piece(line, piece.face, piece.struck)
        for piece in cell
        for line in wrap(piece.text, piece.face, lambda _: width)
    ]


def _words(lines: Sequence[Piece], column: Column, left: float) -> Iterator[Words]:
    """Place the lines of a cell."""
    x = left if column.align == "left" else left + column.width - GUTTER
    for number, line in enumerate(lines):
        y = PAD + number * LEADING + CELL.drop
        yield Words(x, y, line.text, line.face, column.align, line.struck)


def row_strips(columns: Sequence[Column], cells: Sequence[Cell], rule: float) -> Iterator[Strip]:
    """Lay out a row, with a rule below it.

    Args:
        columns: Their widths.
        cells: One for each column.
        rule: The rule's thickness in points; 0 for none.

    Yields:
        One strip; more only if a page cannot hold it, cut between lines.
    """
    cut = int((HIGHEST_ROW - 2 * PAD) / LEADING)
    lefts = lefts_of(columns)
    wrapped = [
        _lines(cell, column.width - GUTTER) for column, cell in zip(columns, cells, strict=True)
    ]
    total = max(map(len, wrapped))
    for start in range(0, max(total, 1), cut):
        part = [lines[start : start + cut] for lines in wrapped]
        height = 2 * PAD + LEADING * max(map(len, part))
        marks: list[Mark] = []
        for lines, column, left in zip(part, columns, lefts, strict=True):
            marks += _words(lines, column, left)
        if rule and start + cut >= total:
            marks.append(Rule(SIDE, height, WIDTH - SIDE, height, rule))
        yield Strip(height, tuple(marks))


def title_strip(title: str) -> Strip:
    """Lay out the head of a section."""
    height = ABOVE_SECTION + SECTION.leading + PAD
    return Strip(height, (Words(SIDE, ABOVE_SECTION + SECTION.drop, title, SECTION),), title)


def again_strip(title: str) -> Strip:
    """Lay out the head of a section on each further page; a reader jumps to the first only."""
    return replace(title_strip(f"{title} (continued)"), title="")


def column_strip(columns: Sequence[Column]) -> Strip:
    """Lay out the heads of columns."""
    cells = [(Piece(column.title, COLUMN),) for column in columns]
    return stacked(list(row_strips(columns, cells, RULE)))


def table(title: str, columns: Sequence[Column], rows: Iterable[Sequence[Cell]]) -> Section:
    """Lay out a section with a table whose column heads stand on every page of it.

    Args:
        title: Head of the section.
        columns: Columns, as wide together as the page and one gutter.
        rows: Their cells; none prints "None recorded.".
    """
    strips = tuple(strip for row in rows for strip in row_strips(columns, row, 0))
    if not strips:
        whole = [Column("", INNER + GUTTER)]
        none = row_strips(whole, [(Piece("None recorded.", NOTE),)], 0)
        return Section(title_strip(title), Strip(0), tuple(none))
    heads = column_strip(columns)
    again = stacked([again_strip(title), heads])
    return Section(stacked([title_strip(title), heads]), again, strips)


WHOLE = (Column("", INNER + GUTTER),)
"""One column as wide as the page."""


def paragraphs(lines: Iterable[str], face: Face = CELL) -> Section:
    """Lay out paragraphs across the page, without a head."""
    rows = (strip for line in lines for strip in row_strips(WHOLE, [(Piece(line, face),)], 0))
    return Section(Strip(0), Strip(0), tuple(rows))
