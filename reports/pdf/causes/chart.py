"""How batches turned out, on paper: each figure in words with its plot, and when they turned.

Guarantees: everything the view says, in its order.
"""

from typing import BinaryIO

from reports.kit.frame import Heading
from reports.pdf.causes.control import control_section
from reports.pdf.causes.plots import plot_section
from reports.pdf.kit.head import NOTHING, paper_head
from reports.pdf.kit.page import write_paper
from reports.pdf.kit.rows import paragraphs, title_strip
from reports.pdf.kit.strips import Section
from reports.views.causes import ChartView, FigureView


def chart_paper(view: ChartView, out: BinaryIO) -> None:
    """Write how batches turned out as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    heading = Heading("Control chart", view.of)
    sections = [paper_head(view.frame, heading), paragraphs(view.lines)]
    for item in view.figures:
        sections += [_drawn(item), paragraphs(item.words)]
    write_paper(out, view.frame, heading, sections)


def _drawn(item: FigureView) -> Section:
    if item.control:
        return control_section(item.title, item.control)
    return plot_section(item.plot) if item.plot else Section(title_strip(item.title), NOTHING)
