"""A control chart on paper: a dot and a code a batch, hollow outside, words beside every limit."""

from itertools import pairwise

from reportlab.lib.units import mm

from ledger.service.causes.chart import Figure
from reports.pdf.causes import control as module
from reports.pdf.causes.control import control_section
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Dot, Mark, Rule, Upright, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.styles import SMALL
from reports.pdf.kit.text import width_of
from reports.views.causes import ControlView, Course
from reports.words.causes.chart import MOST_DRAWN
from reports.words.causes.control import control_of
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import laid
from tests.reports.words.causes.charts import FLOW, series

BARE = Course("", (None,), (), ())
"""Nothing drawn."""


def drawn(figures: tuple[str, ...]) -> tuple[ControlView, tuple[Mark, ...]]:
    view = control_of(series(Figure.YIELD, figures), MOST_DRAWN)
    assert view is not None
    (strip,) = control_section("Yield", view).rows
    return view, strip.marks


def test_forty_batches_have_their_dots_and_codes_clear_of_each_other_inside_the_margins() -> None:
    view, marks = drawn(FLOW * 5)
    names = [mark for mark in marks if isinstance(mark, Upright)]
    dots = [mark for mark in marks if isinstance(mark, Dot)]
    assert [mark.text for mark in names] == list(view.names)
    assert (len(names), len(dots)) == (40, 80)
    apart = [b.x - a.x for a, b in pairwise(names)]
    assert min(apart) >= names[0].face.size
    assert all(SIDE <= x <= SIDE + INNER for x in (mark.x for mark in names))
    assert all(SIDE <= x <= SIDE + INNER for x in (mark.x for mark in dots))


def test_what_lies_outside_is_hollow_and_limits_are_dashed_with_their_figures() -> None:
    """The differences of the leap lie outside too, so one dot above and one below is hollow."""
    _, marks = drawn((*FLOW, *FLOW, "90"))
    assert sum(mark.is_hollow for mark in marks if isinstance(mark, Dot)) == 2
    assert sum(mark.is_dashed for mark in marks if isinstance(mark, Rule)) == 4
    words = [mark.text for mark in marks if isinstance(mark, Words)]
    assert {"90", "37.9"} <= set(words)
    assert sum(text.startswith(("mean", "upper limit", "lower limit")) for text in words) == 5


def test_the_words_of_limits_that_are_near_each_other_stand_one_below_the_other() -> None:
    _, marks = drawn((*FLOW, *FLOW, "900"))
    beside = [mark for mark in marks if isinstance(mark, Words) and mark.x > SIDE + INNER * 0.8]
    lines = sorted(mark.y for mark in beside if mark.text != "900")
    assert all(b - a >= beside[0].face.size - 0.01 for a, b in pairwise(lines))


def test_a_figure_stands_left_of_its_dot_only_where_it_would_come_near_the_end_of_the_lines() -> (
    None
):
    """Of eighty batches, one outside each; a figure keeps 4 mm off the words of the limits."""
    register()
    told = [f"{'9' * (1 + number % 5)}" for number in range(80)]
    places = (0.5,) * 80
    for number, words in enumerate(told):
        view = ControlView(("A",) * 80, Course("", places, (), ((number, words),)), BARE)
        (strip,) = control_section("Yield", view).rows
        (dot,) = [mark for mark in strip.marks if isinstance(mark, Dot) and mark.is_hollow]
        (figure,) = [m for m in strip.marks if isinstance(m, Words) and m.text == words]
        is_near = dot.x + width_of(words, SMALL) + 4 * mm > SIDE + INNER - 28 * mm
        assert (figure.align == "right") is is_near
        assert (figure.x < dot.x) is is_near


def test_every_mark_of_a_control_chart_stands_where_it_stood() -> None:
    """Gaps, outside ones alone, in a row and at the end, and limits close together and apart."""
    register()
    limits = ((0.5, "mean 90"), (0.52, "upper limit 91"), (0.1, "lower limit 80"), (0.51, "92"))
    figures = Course(
        "Yield, %", (0.5, None, 0.9, 0.95, 0.4, 0.2, 1.0), limits, ((2, "97"), (3, "98"), (6, "99"))
    )
    ranges = Course("From one to the next", (None, None, 0.1, 0.2, 0.0, 1.0, 0.3), limits[:2], ())
    view = ControlView(tuple(f"OE-{n:03d}" * (1 + n % 2) for n in range(7)), figures, ranges)
    check_golden("laid/control.txt", laid(control_section("Yield", view)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
