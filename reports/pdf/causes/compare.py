"""A trial compared, on paper: what it tells, tables by factor, plots, batches.

Guarantees: everything the view says, in its order; a dot for every batch of a plot.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import NOTHING, paper_head
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, write_paper
from reports.pdf.kit.rows import Cell, Column, Piece, row_strips, table, title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import CELL, COLUMN, GUTTER, LEADING, NOTE, RULE, VALUE
from reports.pdf.kit.text import wrap
from reports.views.causes import BatchRow, ComparisonView, FactorView, PlotView

WHOLE = (Column("", INNER + GUTTER),)
"""One column as wide as the page."""
LABEL = 40 * mm
"""Width of the labels of a plot."""
LINE = 100 * mm
"""Length of the line of a plot."""
DOT = 4.5
"""Side of a dot in points."""
ROW = 5.5 * mm
"""Height of one line of a plot."""
BATCH_COLUMNS = (
    Column("Batch", 30 * mm),
    Column("Settings", 70 * mm),
    Column("Last look", 28 * mm),
    Column("NTU", 17 * mm, "right"),
    Column("Yield %", 19 * mm, "right"),
    Column("", 19 * mm),
)
"""The table of batches."""


def comparison_paper(view: ComparisonView, out: BinaryIO) -> None:
    """Write the comparison of a trial as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    heading = Heading("Trial", view.group)
    sections = [
        paper_head(view.frame, Heading("Trial compared", view.group)),
        _paragraphs((*view.lines, *view.outcome, view.front)),
        *(_factor(factor, view.ages) for factor in view.factors),
        *(_plot(plot) for plot in view.plots),
        table("Batches", BATCH_COLUMNS, (_batch_cells(row) for row in view.batches)),
    ]
    write_paper(out, view.frame, heading, sections)


def _paragraphs(lines: Sequence[str]) -> Section:
    rows = (strip for line in lines for strip in row_strips(WHOLE, [(Piece(line),)], 0))
    return Section(NOTHING, NOTHING, tuple(rows))


def _factor(factor: FactorView, ages: Sequence[str]) -> Section:
    title = f"By {factor.name}"
    if not factor.rows:
        only = tuple(row_strips(WHOLE, [(Piece(factor.words, NOTE),)], 0))
        return Section(title_strip(title), NOTHING, only, whole=True)
    room = (INNER + GUTTER - (45 + 12 + 20 + 22) * mm) / max(len(ages), 1)
    columns = (
        Column(factor.name, 45 * mm),
        Column("n", 12 * mm, "right"),
        *(Column(f"Look, {age}", room) for age in ages),
        Column("NTU", 20 * mm, "right"),
        Column("Yield %", 22 * mm, "right"),
    )
    rows = [
        [
            (Piece(text),)
            for text in (row.level, row.n, *row.looks, row.ntu, row.yield_pct)
        ]
        for row in factor.rows
    ]  # fmt: skip
    section = table(title, columns, rows)
    words = tuple(row_strips(WHOLE, [(Piece(factor.words),)], 0))
    return Section(section.head, section.again, (*section.rows, *words), whole=True)


def _plot(plot: PlotView) -> Section:
    strips = [_plot_row(row.label, row.places) for row in plot.rows]
    ends = Strip(
        LEADING,
        (
            Words(SIDE + LABEL, CELL.drop, plot.left, COLUMN),
            Words(SIDE + LABEL + LINE, CELL.drop, plot.right, COLUMN, "right"),
        ),
    )
    title = f"{plot.title[:1].upper()}{plot.title[1:]}"
    return Section(title_strip(title), NOTHING, (stacked([*strips, ends]),), whole=True)


def _plot_row(label: str, places: Sequence[float]) -> Strip:
    middle = ROW / 2
    lines = wrap(label, CELL, lambda _: LABEL - GUTTER)
    words = [Words(SIDE, middle + 3, line, CELL) for line in lines[:1]]
    rule = Rule(SIDE + LABEL, middle, SIDE + LABEL + LINE, middle, RULE)
    return Strip(ROW, (*words, rule, *_dots(places, middle)))


def _dots(places: Sequence[float], middle: float) -> Iterator[Mark]:
    """Draw a square for every batch; those at one place stand above each other."""
    met: Counter[float] = Counter()
    for place in places:
        x = SIDE + LABEL + place * LINE
        y = middle - met[place] * (DOT + 0.8)
        met[place] += 1
        yield Rule(x - DOT / 2, y, x + DOT / 2, y, DOT)


def _batch_cells(row: BatchRow) -> list[Cell]:
    texts = (row.lot, row.settings, row.look, row.ntu, row.yield_pct)
    # Not called the best, as no other need beat a hazy one that lost least.
    best = (Piece("not beaten", VALUE),) if row.is_front else ()
    return [*((Piece(text),) for text in texts), best]
