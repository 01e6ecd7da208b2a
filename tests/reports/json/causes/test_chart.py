"""A chart for machines has figures as text, and null where there are too few."""

from ledger.service.causes.chart import Charts
from reports.json.causes.chart import ShareTold, TurnedTold, chart_answer
from reports.words.causes.chart import chart_view
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check
from tests.reports.words.causes.charts import FULL, charts


def test_limits_and_the_next_are_told_or_null() -> None:
    told = chart_answer(FULL, chart_view(FULL), "chart.pdf")
    ten, leap, few = told.series
    assert ten.limits is not None
    assert (ten.limits.mean, ten.limits.low, ten.limits.high) == ("50.81", "45.8159", "55.8041")
    assert ten.next is not None
    assert (ten.next.low, ten.next.high, ten.next.inside, ten.next.of) == ("47.6", "53.6", 9, 11)
    assert leap.limits is not None
    assert (leap.limits.outside_codes, leap.limits.leap_codes) == (("E-13",), ("E-13",))
    assert (few.limits, few.next, len(few.points)) == (None, None, 4)
    assert told.turned[-1] == TurnedTold("60", None, "0.25", 7)
    assert told.path == "chart.pdf"


def test_the_share_that_fails_has_its_ends() -> None:
    told = chart_answer(charts(), chart_view(charts()), None)
    assert told.failing == ShareTold(3, 12, "0.0548606", "0.571858")
    assert told.turned == ()


def test_every_figure_of_charts_is_the_kept_one() -> None:
    check(
        "chart",
        chart_answer(FULL, chart_view(FULL), "chart.pdf"),
        chart_answer(charts(), chart_view(charts()), None),
    )


def test_every_part_of_charts_stands_under_its_own_key() -> None:
    view = chart_view(FULL)
    check("chart_filled", *(chart_answer(each(Charts), view, None) for each in (filled, bare)))
