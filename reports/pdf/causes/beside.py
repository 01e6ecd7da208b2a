"""Words beside the dots of a square, none over another and none over a dot.

Guarantees: words stand as near their dot as there is room, and a line leads to those that stand
further off; words for which there is none are left out, since a table below names every dot.
"""

from collections.abc import Iterator, Sequence
from itertools import product
from typing import NamedTuple

from reportlab.lib.units import mm

from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.styles import RULE, SMALL
from reports.pdf.kit.text import CAP_HEIGHT, width_of

RADIUS = 1.2 * mm
"""Radius of a dot."""
GAP = 0.8 * mm
"""Between a dot and its words."""
LINE = SMALL.size * 1.1
"""Height that a line of words keeps free."""
REACH = 12
"""Lines above and below a dot where words may stand."""
FURTHER = tuple(step * 8 * mm for step in range(6))
"""How far beside their usual place words may stand."""


class Spot(NamedTuple):
    """A dot and its words; its middle in points, `y` downwards."""

    x: float
    y: float
    words: str


class Area(NamedTuple):
    """A rectangle in points."""

    left: float
    top: float
    right: float
    below: float

    def crosses(self, other: "Area") -> bool:
        """Say whether two have anything in common."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.below
            and other.top < self.below
        )

    def holds(self, other: "Area") -> bool:
        """Say whether another lies inside."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and other.right <= self.right
            and other.below <= self.below
        )


def words_beside(spots: Sequence[Spot], within: Area) -> list[Mark]:
    """Place the words of dots, with a line to those that do not stand right beside theirs.

    Args:
        spots: The dots.
        within: Where words may stand.
    """
    taken = [_around(spot) for spot in spots]
    marks: list[Mark] = []
    for spot in spots:
        for area, near in _places(spot):
            if within.holds(area) and not any(map(area.crosses, taken)):
                taken.append(area)
                middle = (area.top + area.below) / 2
                base = middle + CAP_HEIGHT * SMALL.size / 2
                marks.append(Words(area.left, base, spot.words, SMALL))
                end = area.left - GAP / 2 if area.left > spot.x else area.right + GAP / 2
                if not near:
                    marks.append(Rule(spot.x, spot.y, end, middle, RULE))
                break
    return marks


def _around(spot: Spot) -> Area:
    return Area(spot.x - RADIUS, spot.y - RADIUS, spot.x + RADIUS, spot.y + RADIUS)


def _places(spot: Spot) -> Iterator[tuple[Area, bool]]:
    """Yield where the words of a dot may stand, the nearest first, and whether that is near."""
    width, off = width_of(spot.words, SMALL), RADIUS + GAP
    lines = sorted(range(-REACH, REACH + 1), key=lambda line: (abs(line), line < 0))
    for further, line in product(FURTHER, lines):
        middle = spot.y + line * LINE
        for left in (spot.x + off + further, spot.x - off - further - width):
            area = Area(left, middle - LINE / 2, left + width, middle + LINE / 2)
            yield area, not (line or further)
