"""A control chart as places: every batch, the mean, the limits, and what lies outside.

Guarantees: the figures, their limits and the differences are those of the chart that was reckoned;
every limit has its figure beside it. Refuses: a series without limits.

References:
    NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: individuals above, moving ranges
    below (from memory).
"""

from collections.abc import Iterable, Sequence

from ledger.science.ranges import figure
from ledger.science.statistics.charts import Chart, moving_ranges
from ledger.service.causes.chart import Series
from reports.views.causes import ControlView, Course

RANGES = "From one batch to the next"
"""What the differences are called."""


def control_of(series: Series, most: int) -> ControlView | None:
    """Return the control chart of the last batches of a series; None where it has no limits.

    Args:
        series: The figures, in the order of time.
        most: So many batches are drawn.
    """
    chart = series.chart
    if chart is None:
        return None
    shown = series.points[-most:]
    first = len(series.points) - len(shown)
    values = [float(point.value) for point in shown]
    gaps: list[float | None] = [None, *moving_ranges(chart.figures)]
    return ControlView(
        tuple(f"{point.code} {point.day}" for point in shown),
        _course("Each batch", values, _limits(chart), _from(first, chart.outside)),
        _course(RANGES, gaps[first:], _range_limits(chart), _from(first, chart.jumps)),
    )


Limits = tuple[tuple[float, str], ...]


def _limits(chart: Chart) -> Limits:
    return (
        (chart.mean, f"mean {figure(chart.mean)}"),
        (chart.high, f"upper limit {figure(chart.high)}"),
        (chart.low, f"lower limit {figure(chart.low)}"),
    )


def _range_limits(chart: Chart) -> Limits:
    return (
        (chart.mean_range, f"mean {figure(chart.mean_range)}"),
        (chart.most_range, f"upper limit {figure(chart.most_range)}"),
        (0.0, "0"),
    )


def _from(first: int, places: Iterable[int]) -> list[int]:
    return [place - first for place in places if place >= first]


def _course(
    title: str, values: Sequence[float | None], limits: Limits, outside: Sequence[int]
) -> Course:
    ends = [*(value for value in values if value is not None), *(value for value, _ in limits)]
    low, high = min(ends), max(ends)

    def place(value: float) -> float:
        return (value - low) / (high - low) if high > low else 0.5

    return Course(
        title,
        tuple(None if value is None else place(value) for value in values),
        tuple((place(value), words) for value, words in limits),
        tuple((at, figure(told)) for at in outside if (told := values[at]) is not None),
    )
