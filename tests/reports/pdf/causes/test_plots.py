"""Plots on paper have their limits drawn through every line."""

from reports.pdf.causes.plots import plot_section
from reports.pdf.kit.marks import Rule
from reports.words.causes.chart import chart_view
from tests.reports.words.causes.charts import FULL


def test_every_line_of_a_plot_has_its_three_limits() -> None:
    plot = chart_view(FULL).figures[0].plot
    assert plot is not None
    (strip,) = plot_section(plot).rows
    upright = [mark for mark in strip.marks if isinstance(mark, Rule) and mark.x == mark.to_x]
    assert len(upright) == 3 * len(plot.rows)
