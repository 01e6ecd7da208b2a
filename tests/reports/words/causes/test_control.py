"""A control chart has every batch in its place, the mean, and limits with their figures."""

import pytest

from ledger.service.causes.chart import Figure
from reports.words.causes import control as module
from reports.words.causes.control import control_of
from tests.kept.said import check_constants, check_said
from tests.reports.words.causes.charts import FLOW, series


def test_batches_stand_between_the_published_limits() -> None:
    """NIST/SEMATECH e-Handbook 6.3.2.2: 45.8159, 50.81 and 55.8041 (from memory)."""
    view = control_of(series(Figure.YIELD, FLOW), 40)
    assert view is not None
    assert view.names[0] == "E-1 2026-03-01"
    places, words = zip(*view.figures.limits, strict=True)
    assert places == pytest.approx((0.5, 1.0, 0.0))
    assert words == ("mean 50.81", "upper limit 55.8", "lower limit 45.82")
    assert view.figures.places[0] == pytest.approx((49.6 - 45.8159) / (55.8041 - 45.8159), abs=1e-3)
    assert view.figures.outside == view.ranges.outside == ()
    assert view.ranges.places[0] is None
    assert view.ranges.places[1] == pytest.approx(2.0 / 6.1347, abs=1e-3)
    assert [words for _, words in view.ranges.limits] == ["mean 1.88", "upper limit 6.13", "0"]


def test_what_lies_outside_is_marked_by_its_place_among_those_drawn() -> None:
    leap = series(Figure.LOSS, (*FLOW, *FLOW, "90"), 1)
    view = control_of(leap, 5)
    assert view is not None
    assert len(view.names) == len(view.figures.places) == len(view.ranges.places) == 5
    assert view.figures.outside == ((4, "90"),)
    assert view.ranges.outside == ((4, "37.9"),)
    assert view.figures.places[4] == 1.0
    assert None not in view.ranges.places


def test_a_series_without_limits_has_no_control_chart() -> None:
    assert control_of(series(Figure.NTU, FLOW[:4]), 40) is None
    view = control_of(series(Figure.YIELD, ("5",) * 10), 40)
    assert view is not None
    assert set(view.figures.places) == {0.5}


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
