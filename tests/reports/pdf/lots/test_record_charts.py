"""The small charts of a record: a line a sort, a dot a reading, shading up to what is wanted."""

import pytest
from msgspec.structs import replace

from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Box, Dot, Words
from reports.pdf.lots import record_charts as module
from reports.pdf.lots.record_charts import DOT, HIGH, LEFT, LENGTH, clarity, hours
from reports.views.lots import TimeSpan
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import RECORD
from tests.reports.pdf.laid import laid


@pytest.fixture(autouse=True)
def _fonts() -> None:
    register()


def test_a_rest_is_a_bar_and_a_look_a_dot_where_they_were() -> None:
    assert RECORD.bar is not None
    marks = hours(RECORD.bar).head.marks
    (bar,) = [mark for mark in marks if isinstance(mark, Box)]
    (dot,) = [mark for mark in marks if isinstance(mark, Dot)]
    assert (bar.x, bar.width) == pytest.approx((LEFT + 0.1 * LENGTH, 0.6 * LENGTH))
    assert dot.x == pytest.approx(LEFT + 0.9 * LENGTH)
    words = [mark.text for mark in marks if isinstance(mark, Words)]
    assert {"chill", "look", "2026-03-01 09:30"} <= set(words)


def test_what_is_wanted_is_shaded_and_every_reading_stands_beside_its_dot() -> None:
    assert RECORD.clarity is not None
    marks = clarity(RECORD.clarity).head.marks
    (shade,) = [mark for mark in marks if isinstance(mark, Box)]
    assert shade.height == pytest.approx(0.4 * HIGH)
    assert len([mark for mark in marks if isinstance(mark, Dot)]) == 2
    assert {"1.6", "6.3"} <= {mark.text for mark in marks if isinstance(mark, Words)}


def test_every_mark_of_the_small_charts_stands_where_it_stood() -> None:
    """A long name, spans just above and below a dot, ticks and readings up to and past the end."""
    assert RECORD.bar is not None
    assert RECORD.clarity is not None
    dot = DOT / LENGTH
    spans = (
        TimeSpan("chill", 0.1, 0.7),
        TimeSpan("a kind of act with a long name", 0.2, 0.2 + 1.01 * dot),
        TimeSpan("chill", 0.8, 0.8 + 0.99 * dot),
        TimeSpan("look", 0.5, 0.5),
    )
    days = ((0.0, "first"), (0.95, "before"), (0.96, "after"), (1.0, "last"))
    points = tuple(
        replace(RECORD.clarity.points[0], along=along, up=along / 2)
        for along in (0.0, 0.5, 0.95, 0.96, 1.0)
    )
    strip = replace(RECORD.clarity, points=points, days=days)
    told = laid(
        hours(replace(RECORD.bar, spans=spans, ticks=days)),
        clarity(strip),
        clarity(replace(strip, points=points[:1], wanted_to=None, words="")),
        clarity(replace(strip, points=(), wanted_to=0.0)),
    )
    check_golden("laid/record_charts.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
