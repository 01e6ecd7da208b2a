"""A trial compared, on paper: what it tells, tables by factor, plots, batches.

Guarantees: everything the view says, in its order; a dot for every batch of a plot.
"""

from collections.abc import Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.causes.plots import plot_section
from reports.pdf.causes.scatter import scatter_section
from reports.pdf.kit.head import NOTHING, paper_head
from reports.pdf.kit.page import INNER, write_paper
from reports.pdf.kit.rows import (
    WHOLE,
    Cell,
    Column,
    Piece,
    paragraphs,
    row_strips,
    table,
    title_strip,
)
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import GUTTER, NOTE, VALUE
from reports.views.causes import BatchRow, ComparisonView, FactorView

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
        paragraphs((*view.lines, *view.outcome, view.front)),
        *(_factor(factor, view.ages) for factor in view.factors),
        *([scatter_section(view.scatter)] if view.scatter else []),
        *(plot_section(plot) for plot in view.plots),
        table("Batches", BATCH_COLUMNS, (_batch_cells(row) for row in view.batches)),
    ]
    write_paper(out, view.frame, heading, sections)


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


def _batch_cells(row: BatchRow) -> list[Cell]:
    texts = (row.lot, row.settings, row.look, row.ntu, row.yield_pct)
    # Not called the best, as no other need beat a hazy one that lost least.
    best = (Piece("not beaten", VALUE),) if row.is_front else ()
    return [*((Piece(text),) for text in texts), best]
