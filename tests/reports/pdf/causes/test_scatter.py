"""A scatter on paper: a dot a batch with its lot, controls hollow, ticks on both scales."""

from msgspec.structs import replace

from reports.pdf.causes import scatter as module
from reports.pdf.causes.scatter import ABOVE, HIGH, LEFT, WIDE, scatter_section
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Dot, Words
from reports.views.causes import Scatter, ScatterPoint
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import laid

SCATTER = Scatter(
    (ScatterPoint(0.5, 0.25, "A-1", is_control=False), ScatterPoint(1, 1, "A-2", is_control=True)),
    ((0.0, "0"), (1.0, "20")),
    ((0.0, "0"), (1.0, "8")),
)


def test_every_batch_has_its_dot_and_its_lot() -> None:
    register()
    (strip,) = scatter_section(SCATTER).rows
    one, control = (mark for mark in strip.marks if isinstance(mark, Dot))
    assert (one.x, one.y, one.is_hollow) == (LEFT + WIDE / 2, ABOVE + HIGH * 0.75, False)
    assert (control.x, control.y, control.is_hollow) == (LEFT + WIDE, ABOVE, True)
    words = {mark.text for mark in strip.marks if isinstance(mark, Words)}
    assert {"A-1", "A-2", "0", "20", "8"} <= words


def test_the_head_says_that_controls_are_hollow_where_one_is_shown() -> None:
    register()
    assert scatter_section(SCATTER).head.title == "NTU against loss, controls hollow"
    without = replace(SCATTER, points=SCATTER.points[:1])
    assert scatter_section(without).head.title == "NTU against loss"


def test_every_mark_of_a_scatter_stands_where_it_stood() -> None:
    """Dots at every edge and near each other: words stand beside, further off, or not at all."""
    register()
    points = (
        *SCATTER.points,
        ScatterPoint(0, 0, "A-3", is_control=False),
        ScatterPoint(0, 1, "A-4", is_control=False),
        *(ScatterPoint(0.98, 0.5 + n / 99, f"B-{n}", is_control=n == 2) for n in range(6)),
        *(ScatterPoint(0.02, 0.01 * n, f"C-{n}", is_control=False) for n in range(6)),
        ScatterPoint(0.5, 0.6, "a lot with a name wider than the square is " * 5, is_control=False),
    )
    along = ((0.0, "0"), (0.5, "10"), (1.0, "20"))
    whole = replace(SCATTER, points=points, along=along, up=(*SCATTER.up, (0.25, "2")))
    bare = replace(SCATTER, points=(), along=(), up=())
    check_golden("laid/scatter.txt", laid(scatter_section(whole), scatter_section(bare)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
