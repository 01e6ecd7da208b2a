"""A scatter on paper: a dot a batch with its lot, controls hollow, ticks on both scales."""

from itertools import pairwise

from msgspec.structs import replace

from reports.pdf.causes.scatter import HIGH, LEFT, WIDE, scatter_section
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Dot, Words
from reports.views.causes import Scatter, ScatterPoint

SCATTER = Scatter(
    (ScatterPoint(0.5, 0.25, "A-1", is_control=False), ScatterPoint(1, 1, "A-2", is_control=True)),
    ((0.0, "0"), (1.0, "20")),
    ((0.0, "0"), (1.0, "8")),
)


def test_every_batch_has_its_dot_and_its_lot() -> None:
    register()
    (strip,) = scatter_section(SCATTER).rows
    control, one = (mark for mark in strip.marks if isinstance(mark, Dot))
    assert (one.x, one.y, one.is_hollow) == (LEFT + WIDE / 2, HIGH * 0.75, False)
    assert (control.x, control.y, control.is_hollow) == (LEFT + WIDE, 0, True)
    words = {mark.text for mark in strip.marks if isinstance(mark, Words)}
    assert {"A-1", "A-2", "0", "20", "8"} <= words


def test_lots_at_one_place_are_told_one_below_the_other() -> None:
    register()
    points = tuple(ScatterPoint(0.5, 0.5, f"A-{n}", is_control=False) for n in range(5))
    (strip,) = scatter_section(replace(SCATTER, points=points)).rows
    lots = [mark.y for mark in strip.marks if isinstance(mark, Words) and mark.text[:2] == "A-"]
    assert all(low - high >= 7 for high, low in pairwise(lots))
