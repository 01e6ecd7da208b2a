"""A chart on paper reads as on the screen."""

from msgspec.structs import replace

from reports.pdf.causes.chart import chart_paper
from reports.views.causes import FigureView
from reports.words.causes.chart import chart_view
from tests.kept.golden import check_golden
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.readback import metadata_of, printed, text_of
from tests.reports.words.causes.charts import FULL

VIEW = replace(chart_view(FULL), frame=FRAME)


def test_the_paper_reads_as_the_kept_one() -> None:
    check_golden("chart.txt", text_of(printed(chart_paper, VIEW)))
    check_golden("ink/chart.txt", ink_of(printed(chart_paper, VIEW)))
    assert metadata_of(printed(chart_paper, VIEW))["Title"] == "Control chart Orange essence"


def test_a_figure_is_drawn_as_control_chart_as_plot_or_in_words_alone() -> None:
    plot, control, *_ = (*VIEW.figures, *VIEW.figures)
    figures = (
        *VIEW.figures,
        FigureView("Told in words", ("Too few to draw.",), None),
        replace(plot, control=None),
        replace(control, plot=None),
    )
    whole = replace(VIEW, figures=figures)
    check_golden("ink/chart_whole.txt", ink_of(printed(chart_paper, whole)))
