"""Plots on paper: places along lines that share their ends.

Guarantees: a dot for every batch, and none hides another.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import CELL, COLUMN, GUTTER, LEADING, RULE
from reports.pdf.kit.text import wrap
from reports.views.causes import PlotView

LABEL = 40 * mm
"""Width of the labels of a plot."""
LINE = 100 * mm
"""Length of the line of a plot."""
DOT = 4.5
"""Side of a dot in points."""
STEP = DOT + 0.8
"""From one dot to the next above it."""
ROW = 5.5 * mm
"""Least height of one line of a plot."""


def plot_section(plot: PlotView) -> Section:
    """Lay out a plot: a line a row, a dot a batch, and a stroke where a limit stands."""
    strips = [_plot_row(row.label, row.places, plot.limits) for row in plot.rows]
    ends = Strip(
        LEADING,
        (
            Words(SIDE + LABEL, CELL.drop, plot.left, COLUMN),
            Words(SIDE + LABEL + LINE, CELL.drop, plot.right, COLUMN, "right"),
        ),
    )
    title = f"{plot.title[:1].upper()}{plot.title[1:]}"
    return Section(title_strip(title), NOTHING, (stacked([*strips, ends]),), whole=True)


def _plot_row(label: str, places: Sequence[float], limits: Sequence[float]) -> Strip:
    # Those above each other have room of their own, so that none stands on the line before.
    stacked_most = max(Counter(places).values(), default=1)
    height = max(ROW, ROW / 2 + stacked_most * STEP)
    middle = height - ROW / 2
    lines = wrap(label, CELL, lambda _: LABEL - GUTTER)
    words = [Words(SIDE, middle + 3, line, CELL) for line in lines[:1]]
    rule = Rule(SIDE + LABEL, middle, SIDE + LABEL + LINE, middle, RULE)
    strokes = (
        Rule(SIDE + LABEL + place * LINE, 0, SIDE + LABEL + place * LINE, height, RULE)
        for place in limits
    )
    return Strip(height, (*words, rule, *strokes, *_dots(places, middle)))


def _dots(places: Sequence[float], middle: float) -> Iterator[Mark]:
    """Draw a square for every batch; those at one place stand above each other."""
    met: Counter[float] = Counter()
    for place in places:
        x = SIDE + LABEL + place * LINE
        y = middle - met[place] * STEP
        met[place] += 1
        yield Rule(x - DOT / 2, y, x + DOT / 2, y, DOT)
