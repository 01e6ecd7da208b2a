"""A scatter on paper: turbidity against loss, ticks on both scales, controls hollow.

Guarantees: a dot for every batch of the view, with its lot beside it, inside the page.
"""

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Dot, Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import RULE, SMALL
from reports.views.causes import Scatter

LEFT, WIDE, HIGH = SIDE + 16 * mm, INNER - 46 * mm, 60 * mm
"""Left edge, width and height of the square; the lots have room at its right."""
TICK = 1.2 * mm
"""Length of a tick."""
BESIDE = 22 * mm
"""Room that a lot's code takes beside its dot."""
RADIUS = 1.2 * mm
"""Radius of a dot."""


def scatter_section(scatter: Scatter) -> Section:
    """Lay out a scatter with its ticks; all on one page."""
    marks: list[Mark] = [
        Rule(LEFT, 0, LEFT, HIGH, RULE),
        Rule(LEFT, HIGH, LEFT + WIDE, HIGH, RULE),
    ]
    for place, text in scatter.along:
        x = LEFT + place * WIDE
        marks.append(Rule(x, HIGH, x, HIGH + TICK, RULE))
        marks.append(Words(x, HIGH + TICK + SMALL.drop, text, SMALL))
    for place, text in scatter.up:
        y = HIGH * (1 - place)
        marks.append(Rule(LEFT - TICK, y, LEFT, y, RULE))
        marks.append(Words(LEFT - TICK - 1 * mm, y + SMALL.size / 3, text, SMALL, "right"))
    told: list[tuple[float, float]] = []
    for point in sorted(scatter.points, key=lambda each: -each.up):
        x, y = LEFT + point.along * WIDE, HIGH * (1 - point.up)
        marks.append(Dot(x, y, RADIUS, is_hollow=point.is_control))
        # Below those beside it, so that no two lots stand over each other.
        low = max([y, *(other + SMALL.size for at, other in told if abs(at - x) < BESIDE)])
        told.append((x, low))
        marks.append(Words(x + RADIUS + 0.8 * mm, low + SMALL.size / 3, point.words, SMALL))
    low = HIGH + TICK + SMALL.leading
    marks.append(Words(LEFT, low + SMALL.drop, "loss, % of what went in", SMALL))
    below = max([low, *(y for _, y in told)]) + SMALL.leading + 1 * mm
    drawn = Strip(below, tuple(marks))
    return Section(title_strip("NTU against loss, controls hollow"), NOTHING, (drawn,), whole=True)
