"""The small charts of a record: a line a sort, a dot a reading, shading up to what is wanted."""

import pytest

from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Box, Dot, Words
from reports.pdf.lots.record_charts import HIGH, LEFT, LENGTH, clarity, hours
from tests.reports.pdf.examples import RECORD


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
