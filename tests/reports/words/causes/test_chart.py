"""A chart says limits, the next figure and ages only where there is enough."""

from math import inf

import pytest

from ledger.science.statistics.survival import Part
from ledger.service.causes.chart import Figure
from reports.words.causes import chart as module
from reports.words.causes.chart import after_chart, chart_view
from reports.words.causes.plots import plot_lines
from tests.kept.said import check_constants, check_said
from tests.reports.words.causes.charts import FULL, charts, series

TEN, LEAP, FEW, HAZE = chart_view(FULL).figures


def test_ten_figures_have_the_published_limits() -> None:
    """NIST/SEMATECH e-Handbook 6.3.2.2: 45.8159, 50.81 and 55.8041 (from memory)."""
    assert TEN.title == "Yield, % of the liquids put in"
    assert TEN.words == (
        "Mean 50.81; by itself it goes from 45.82 to 55.8, and from one batch to the next by up to "
        "6.13.",
        "None lies outside.",
        "The next lies between 47.6 and 53.6 at least 9 times of 11.",
    )
    assert TEN.plot is not None
    lines = plot_lines(TEN.plot, is_plain=True)
    assert lines[1] == "  E-1 2026-03-01   |..............o....|...................|"
    assert lines[-1] == "                   45.82                                55.8"


def test_what_lies_outside_is_a_reason_to_look_and_no_cause() -> None:
    assert LEAP.title == "Left in the filter, pass 1, %"
    assert LEAP.words[1] == "A reason to look, not a cause: E-13 (90)."


def test_a_leap_that_stays_inside_the_limits_is_told_as_one() -> None:
    """Neighbours differ by 1.38 at the mean, so by at most 4.51; 46.4 to 53.7 lie inside."""
    flow = (*("50", "51") * 4, "52.3", "47.7", "49", "50")
    told = chart_view(charts(series(Figure.YIELD, flow))).figures[0].words
    assert told[1] == "A reason to look, not a cause: E-10 (47.7) after a leap."


def test_four_figures_have_neither_limits_nor_a_plot() -> None:
    assert (FEW.words, FEW.plot) == (("4 of the 10 figures that limits take.",), None)


def test_when_they_turned_is_told_between_looks() -> None:
    assert HAZE.words == (
        "5 turned at a look after the making. When between two looks, nobody saw (Turnbull):",
        "  after 0 d, by 18.1 d: 25 % (9 watched so long)",
        "  after 26 d, by 45.5 d: 50 % (8 watched so long)",
        "  not by 60 d: 25 %",
    )
    assert HAZE.plot is not None
    assert [(row.label, *row.places) for row in HAZE.plot.rows] == [
        ("by 18.1 d", 0.25),
        ("by 45.5 d", 0.75),
    ]


def test_how_many_turned_is_told_to_two_figures() -> None:
    (haze,) = chart_view(charts(haze=(Part(0.0, 18.125, 0.12468), Part(18.125, inf, 1)))).figures
    assert haze.words[1:] == (
        "  after 0 d, by 18.1 d: 12 % (9 watched so long)",
        "  not by 18.1 d: 100 %",
    )


def test_of_two_that_turned_it_is_said_how_many_are_wanted() -> None:
    (haze,) = chart_view(charts()).figures
    assert (haze.words, haze.plot) == (
        ("2 batches turned at a look after the making; the time until haze takes 5.",),
        None,
    )


def test_the_share_that_fails_is_told_with_its_exact_interval() -> None:
    """3 of 12: 5.5 to 57.2 % (Clopper and Pearson; scipy 1.14 gives 0.0549 and 0.5719)."""
    assert chart_view(charts()).lines == (
        "Orange essence: 12 batches made for sale.",
        "3 of 12 that were looked at or sent looked worse than wanted or came back; of such "
        "batches 5.5 to 57 % do (exact, 95 %).",
    )


def test_where_one_product_has_too_few_its_whole_kind_comes_next() -> None:
    assert after_chart(charts()) == "pottle chart essence"
    assert after_chart(FULL) == "pottle suspects"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "chart_view")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize("count", [40, 41])
def test_forty_batches_are_drawn_and_of_one_more_it_is_said(count: int) -> None:
    found = charts(series(Figure.YIELD, ("90", "91") * (count // 2) + ("90",) * (count % 2)))
    said = [line for line in chart_view(found).lines if "Drawn are" in line]
    words = [word for figure in chart_view(found).figures for word in figure.words]
    told = [word for word in (*said, *words) if "Drawn are" in word]
    assert told == (["Drawn are the last 40 of 41."] if count == 41 else [])
