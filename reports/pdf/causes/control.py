"""A control chart on paper: batches from left to right, the mean, the limits, what lies outside.

Guarantees: every batch has its dot and its code; what lies outside is hollow, with its figure;
every limit is dashed, with its figure beside it, and none of those stands on another.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Dot, Mark, Rule, Upright, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import COLUMN, RULE, SMALL
from reports.pdf.kit.text import Align, width_of
from reports.views.causes import ControlView, Course

BESIDE = 28 * mm
"""Width of the words beside the limits."""
LENGTH = INNER - BESIDE
"""Length of the lines."""
FIGURES, RANGES = 34 * mm, 16 * mm
"""Height of the figures, and of the differences below them."""
DOT, OUTSIDE = 0.8 * mm, 1.3 * mm
"""Radius of a dot, and of one outside."""
ABOVE, BETWEEN = 3 * mm, 4 * mm
"""Above the uppermost limit, and below a chart."""


def control_section(title: str, view: ControlView) -> Section:
    """Lay out a control chart."""
    return Section(
        title_strip(title),
        NOTHING,
        (
            stacked(
                [_course(view.figures, FIGURES), _course(view.ranges, RANGES), _names(view.names)]
            ),
        ),
        whole=True,
    )


def _course(course: Course, high: float) -> Strip:
    head = SMALL.leading
    top = head + ABOVE
    marks: list[Mark] = [Words(SIDE, COLUMN.drop, course.title, COLUMN)]
    marks += _limits(course.limits, top, high)
    spots = _spots(course.places, top, high)
    marks += [
        Rule(*one[1:], *other[1:], RULE) for one, other in pairwise(spots) if other[0] == one[0] + 1
    ]
    told = dict(course.outside)
    for number, x, y in spots:
        is_outside = number in told
        marks.append(Dot(x, y, OUTSIDE if is_outside else DOT, is_outside))
        if is_outside:
            # Left of it where the line goes on to another outside, or there is no room.
            is_end = x > SIDE + LENGTH - width_of(told[number], SMALL) - BETWEEN
            is_left = is_end or number + 1 in told
            beside = -OUTSIDE - 0.7 * mm if is_left else OUTSIDE + 0.7 * mm
            align: Align = "right" if is_left else "left"
            marks.append(Words(x + beside, y + SMALL.size / 3, told[number], SMALL, align))
    return Strip(top + high + BETWEEN, tuple(marks))


def _limits(limits: Sequence[tuple[float, str]], top: float, high: float) -> Iterator[Mark]:
    """Yield the mean in one line and the limits dashed, each with its words."""
    for number, (place, _) in enumerate(limits):
        y = top + high * (1 - place)
        yield Rule(SIDE, y, SIDE + LENGTH, y, RULE, number > 0)
    lowest = 0.0
    for place, words in sorted(limits, reverse=True):
        lowest = max(top + high * (1 - place) + SMALL.size / 3, lowest + SMALL.size)
        yield Words(SIDE + LENGTH + 2 * mm, lowest, words, SMALL)


def _spots(
    places: Sequence[float | None], top: float, high: float
) -> list[tuple[int, float, float]]:
    """Return the number of each batch that has a figure, and where it stands."""
    return [
        (number, _across(number, len(places)), top + high * (1 - place))
        for number, place in enumerate(places)
        if place is not None
    ]


def _across(number: int, count: int) -> float:
    return SIDE + LENGTH * (number + 0.5) / count


def _names(names: Sequence[str]) -> Strip:
    """Write below each dot which batch it is, to be read from below."""
    deep = max(width_of(name, SMALL) for name in names)
    marks = tuple(
        Upright(_across(number, len(names)) + SMALL.size / 3, 0, name, SMALL)
        for number, name in enumerate(names)
    )
    return Strip(deep + BETWEEN / 2, marks)
