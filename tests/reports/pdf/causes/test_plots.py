"""Plots on paper have their limits drawn through every line."""

from reports.pdf.causes import plots as module
from reports.pdf.causes.plots import DOT, LABEL, plot_section
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.styles import GUTTER
from reports.pdf.kit.text import width_of
from reports.views.causes import PlotRow, PlotView
from reports.words.causes.chart import chart_view
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import NARROW, laid
from tests.reports.words.causes.charts import FULL


def test_every_line_of_a_plot_has_its_three_limits() -> None:
    plot = chart_view(FULL).figures[0].plot
    assert plot is not None
    (strip,) = plot_section(plot).rows
    upright = [mark for mark in strip.marks if isinstance(mark, Rule) and mark.x == mark.to_x]
    assert len(upright) == 3 * len(plot.rows)


def test_a_label_ends_a_gutter_before_its_line() -> None:
    plot = PlotView("NTU", "1", "2", (PlotRow("a level with a long name " * 3, (0.5,)),))
    (strip,) = plot_section(plot).rows
    (told, *_) = [mark for mark in strip.marks if isinstance(mark, Words)]
    reach = LABEL - GUTTER
    assert reach - width_of("a level with", told.face) < width_of(told.text, told.face) <= reach


def test_dots_above_each_other_stay_on_their_own_line() -> None:
    plot = PlotView("NTU", "1", "2", (PlotRow("new", (0.5,) * 6), PlotRow("old", (0.5,) * 6)))
    (strip,) = plot_section(plot).rows
    dots = [mark for mark in strip.marks if isinstance(mark, Rule) and mark.thickness == DOT]
    assert min(dot.y for dot in dots) >= DOT / 2
    lines = [mark.y for mark in strip.marks if isinstance(mark, Rule) and mark.to_x - mark.x > DOT]
    first, second = lines
    assert all(dot.y - DOT / 2 > first or dot.y <= first for dot in dots)
    assert sum(first < dot.y <= second for dot in dots) == 6


def test_every_mark_of_a_plot_stands_where_it_stood() -> None:
    """Dots alone and above each other, a line without any, a label that goes on, limits or none."""
    register()
    rows = (
        PlotRow("a level with a long name " * 3, (0.0, 0.25, 0.25, 1.0)),
        PlotRow("none", ()),
        PlotRow("many", (0.5,) * 6),
        PlotRow(NARROW[:200], (0.5,)),
    )
    plot = PlotView("NTU by rest", "0.8", "3.4", rows, (0.1, 0.9))
    check_golden(
        "laid/plots.txt",
        laid(plot_section(plot), plot_section(PlotView("", "1", "2", rows[:1]))),
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
