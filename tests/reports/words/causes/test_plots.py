"""Plots in words: what stands at one place is counted, ends are told plainly."""

from fractions import Fraction

from ledger.science.statistics.trials import Jar
from reports.views.causes import PlotRow, PlotView
from reports.words.causes import plots as module
from reports.words.causes.compare import comparison_view
from reports.words.causes.plots import plot_lines
from tests.kept.said import check_constants, check_said
from tests.reports.words.causes.trials import CROSSED, comparison


def test_a_plot_counts_batches_at_one_place_and_is_plain_when_asked() -> None:
    plot = PlotView("yield", "80", "90", (PlotRow("24h", (0.0, 1.0, 1.0)), PlotRow("9h", ())))
    assert plot_lines(plot, is_plain=False) == [
        "yield",
        "  24h  ●·······································2",
        "  9h   ·········································",
        "       80                                     90",
    ]
    assert all(line.isascii() for line in plot_lines(plot, is_plain=True))


def test_the_ends_of_a_plot_are_told_without_an_exponent() -> None:
    murky = [
        Jar(f"M-{hours}", {"rest": f"{hours}h"}, False, (), Fraction(ntu), None)
        for hours, ntu in ((1, 1234), (2, 40_000))
    ]
    assert [(plot.left, plot.right) for plot in comparison_view(comparison(*murky)).plots] == [
        ("1234", "40000")
    ]


def test_plots_are_of_looks_turbidity_and_yield_by_each_factor_and_yield_by_look() -> None:
    assert [plot.title for plot in comparison_view(CROSSED).plots] == [
        "yield % by last look",
        "last look by rest",
        "NTU by rest",
        "yield % by rest",
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
