"""The two small charts of a record: how its time went, and how clear it was over its days.

Guarantees: everything that the views tell stands in them, in black and grey only, each kind of act
on a line of its own with its name.
"""

from collections.abc import Iterator
from itertools import pairwise

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Box, Dot, Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import LEADING, RULE, SMALL
from reports.pdf.kit.text import fitting
from reports.views.lots import ClarityStrip, TimeBar

Ticks = tuple[tuple[float, str], ...]
"""Places along a line, from 0 to 1, with their words."""
LABEL = 24 * mm
"""Width of the names at the left."""
DOT = 1.1 * mm
"""Radius of a reading."""
LEFT, LENGTH = SIDE + LABEL, INNER - LABEL - DOT
"""Where a line begins and how long it is: a dot at its end stays inside the margin."""
THICK, GREY = 2.4 * mm, 0.55
"""A span of time: how high, how grey."""
HIGH = 26 * mm
"""Height of the strip of clarity."""
PALE = 0.88
"""How grey what is wanted is shaded."""
ABOVE = 2 * mm
"""Between the head and the uppermost figure."""


def hours(bar: TimeBar) -> Section:
    """Lay out how the time of a batch went, a line for each kind of act."""
    sorts = list(dict.fromkeys(span.sort for span in bar.spans))
    marks: list[Mark] = []
    for line, sort in enumerate(sorts):
        y = line * LEADING
        marks.append(Words(SIDE, y + SMALL.drop, fitting(sort, SMALL, LABEL), SMALL))
        middle = y + LEADING / 2
        for span in bar.spans:
            if span.sort == sort:
                left, width = LEFT + span.start * LENGTH, (span.end - span.start) * LENGTH
                if width > DOT:
                    marks.append(Box(left, middle - THICK / 2, width, THICK, GREY))
                else:
                    marks.append(Dot(left, middle, DOT))
    return _under("How its time went", marks, len(sorts) * LEADING, bar.ticks)


def _under(
    title: str, marks: list[Mark], high: float, ticks: tuple[tuple[float, str], ...]
) -> Section:
    """Put a chart on its line, with the days below it."""
    marks = [*marks, Rule(LEFT, high, LEFT + LENGTH, high, RULE), *_ticks(ticks, high)]
    drawn = Strip(high + 1.5 * mm + SMALL.leading + 1 * mm, tuple(marks))
    return Section(stacked([title_strip(title), Strip(ABOVE), drawn]), NOTHING)


def _ticks(ticks: Ticks, high: float) -> Iterator[Mark]:
    for place, text in ticks:
        x = LEFT + place * LENGTH
        yield Rule(x, high, x, high + 1 * mm, RULE)
        yield Words(
            x, high + 1.5 * mm + SMALL.drop, text, SMALL, "right" if place > END else "left"
        )


END = 0.95
"""From where on the words of a day stand left of it."""


def clarity(strip: ClarityStrip) -> Section:
    """Lay out the turbidity of a lot over its days, what is wanted shaded."""
    marks: list[Mark] = []
    if strip.wanted_to is not None:
        low = HIGH * strip.wanted_to
        marks.append(Box(LEFT, HIGH - low, LENGTH, low, PALE))
    for place, text in strip.scale:
        y = HIGH * (1 - place)
        marks.append(Words(LEFT - 1.5 * mm, y + SMALL.size / 3, f"{text} NTU", SMALL, "right"))
        marks.append(Rule(LEFT - 1 * mm, y, LEFT, y, RULE))
    spots = [(LEFT + p.along * LENGTH, HIGH * (1 - p.up), p.words) for p in strip.points]
    marks += [Rule(*one[:2], *other[:2], RULE) for one, other in pairwise(spots)]
    for x, y, words in spots:
        marks.append(Dot(x, y, DOT))
        is_last = x > LEFT + END * LENGTH
        beside = -1.8 * mm if is_last else 1.8 * mm
        marks.append(Words(x + beside, y - 0.8 * mm, words, SMALL, "right" if is_last else "left"))
    marks.append(Rule(LEFT, 0, LEFT, HIGH, RULE))
    if strip.words:
        marks.append(Words(LEFT + 2 * mm, HIGH - 1 * mm, strip.words, SMALL))
    return _under("How clear it was", marks, HIGH, strip.days)
