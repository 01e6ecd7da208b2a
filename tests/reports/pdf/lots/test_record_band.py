"""Where a lot stands: black with white letters where nobody may use it."""

import pytest

from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Box, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.text import width_of
from reports.pdf.lots import record_band as module
from reports.pdf.lots.record_band import HEIGHT, band
from reports.views.lots import Band
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import NARROW, laid


@pytest.mark.parametrize("is_dark", [True, False])
def test_the_band_is_black_with_white_letters_or_an_empty_frame(is_dark: bool) -> None:
    register()
    told = " ".join(f"2026-06-15, IN: look {number}" for number in range(30))
    marks = band(Band("ON HOLD", told, is_dark=is_dark)).head.marks
    (box,) = [mark for mark in marks if isinstance(mark, Box)]
    words = [mark for mark in marks if isinstance(mark, Words)]
    assert (box.grey, box.height) == (0.0 if is_dark else None, HEIGHT)
    assert {mark.is_white for mark in words} == {is_dark}
    first, second = (mark.text for mark in words[1:])
    assert second[-1] == "…"
    assert told.startswith(f"{first} {second[:-1]}")
    assert max(m.x + width_of(m.text, m.face) for m in words) <= SIDE + INNER


def test_every_mark_of_a_band_stands_where_it_stood() -> None:
    """Without words, with one line, with two, with more; and a status too long for the band."""
    register()
    words = ("", "2026-03-04, MS", "2026-03-04, MS: hazy " * 5, "2026-03-04, MS: hazy " * 30)
    bands = [band(Band("ON HOLD", text, is_dark=text == "")) for text in words]
    bands.append(band(Band("ON HOLD", NARROW, is_dark=True)))
    bands.append(band(Band("RECALLED AND " * 9, "by MS", is_dark=True)))
    check_golden("laid/record_band.txt", laid(*bands))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
