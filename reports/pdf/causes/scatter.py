"""A scatter on paper: turbidity against loss, ticks on both scales, controls hollow.

Guarantees: a dot for every batch of the view, with its lot beside it where there is room, inside
the page.
"""

from reportlab.lib.units import mm

from reports.pdf.causes.beside import RADIUS, Area, Spot, words_beside
from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Dot, Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, WIDTH
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import RULE, SMALL
from reports.views.causes import Scatter

LEFT, WIDE, HIGH = SIDE + 16 * mm, INNER - 46 * mm, 60 * mm
"""Left edge, width and height of the square; the lots have room at its right."""
TICK = 1.2 * mm
"""Length of a tick."""
WITHIN = Area(LEFT + 1 * mm, 0, WIDTH - SIDE, HIGH - 0.5 * mm)
"""Where the lots may stand."""
ABOVE = 2 * mm
"""Between the head and the uppermost tick."""


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
    spots = [
        Spot(LEFT + point.along * WIDE, HIGH * (1 - point.up), point.words)
        for point in sorted(scatter.points, key=lambda each: -each.up)
    ]
    marks += words_beside(spots, WITHIN)
    for point in scatter.points:
        x, y = LEFT + point.along * WIDE, HIGH * (1 - point.up)
        marks.append(Dot(x, y, RADIUS, is_hollow=point.is_control))
    low = HIGH + TICK + SMALL.leading
    marks.append(Words(LEFT, low + SMALL.drop, "loss, % of what went in", SMALL))
    drawn = stacked([Strip(ABOVE), Strip(low + SMALL.leading + 1 * mm, tuple(marks))])
    hollow = ", controls hollow" if any(point.is_control for point in scatter.points) else ""
    return Section(title_strip(f"NTU against loss{hollow}"), NOTHING, (drawn,), whole=True)
