"""How batches turned out one after the other, in words and places on a plot.

Guarantees: limits, the next figure and the time until haze are told only where there is enough,
and else how much is wanted; what lies outside is told as a reason to look. Refuses: to name a
cause.
"""

from collections.abc import Iterator
from datetime import datetime
from fractions import Fraction
from math import inf

from ledger.science.ranges import figure, significant
from ledger.science.statistics.charts import FEWEST
from ledger.science.statistics.survival import FEWEST as FEWEST_TURNED
from ledger.science.statistics.survival import Part
from ledger.service.causes.chart import Charts, Figure, Series
from reports.kit.format import plural
from reports.kit.frame import frame_of
from reports.views.causes import ChartView, FigureView, PlotRow, PlotView
from reports.words.causes.control import control_of
from reports.words.causes.odds import listed

TITLES = {
    Figure.YIELD: "Yield, % of the liquids put in",
    Figure.TARGET: "Came out, % of the target",
    Figure.NTU: "NTU neat when the making ended",
    Figure.ABV: "Strength measured less reckoned, % vol",
    Figure.BRIX: "Sugar measured less reckoned, °Bx",
    Figure.LOSS: "Left in the filter, pass {pass_no}, %",
}
"""What each figure is called."""
HAZE = "Time until haze"
"""What the ages are called at which batches turned."""
MOST_DRAWN = 40
"""So many batches are drawn, the last."""
LISTED = ("product", "kind", "batches")
"""Heads of the list of what can be charted."""


def chart_view(found: Charts, written_at: datetime | None = None) -> ChartView:
    """Return all that a screen or a paper shows."""
    return ChartView(
        frame=frame_of(found.house, found.seal, written_at),
        of=found.of,
        lines=tuple(_head(found)),
        figures=(
            *map(_figure, found.series),
            FigureView(HAZE, tuple(_haze_words(found)), _haze_plot(found.haze)),
        ),
    )


def after_chart(found: Charts) -> str:
    """Return the command that usually comes next: of a product too few, its whole kind."""
    is_too_few = not any(item.chart for item in found.series)
    if is_too_few and found.of != found.kind:
        return f"pottle chart {found.kind}"
    return "pottle suspects"


def _figure(series: Series) -> FigureView:
    return FigureView(
        title_of(series), tuple(_words(series)), _plot(series), control_of(series, MOST_DRAWN)
    )


def title_of(series: Series) -> str:
    """Return what a series shows, with its unit."""
    return TITLES[series.figure].format(pass_no=series.pass_no)


def _head(found: Charts) -> Iterator[str]:
    yield f"{found.of}: {plural(found.batches, 'batch', 'batches')} made for sale."
    if found.share and found.seen:
        low, high = (significant(100 * end, 2) for end in found.share)
        yield (
            f"{found.failed} of {found.seen} that were looked at or sent looked worse than wanted "
            f"or came back; of such batches {low} to {high} % do (exact, 95 %)."
        )


def _words(series: Series) -> Iterator[str]:
    chart, count = series.chart, len(series.points)
    if chart is None:
        yield f"{count} of the {FEWEST} figures that limits take."
    else:
        yield (
            f"Mean {figure(chart.mean)}; by itself it goes from {figure(chart.low)} to "
            f"{figure(chart.high)}, and from one batch to the next by up to "
            f"{figure(chart.most_range)}."
        )
        yield _outside(series)
        if count > MOST_DRAWN:
            yield f"Drawn are the last {MOST_DRAWN} of {count}."
    if series.ahead:
        chance = series.ahead.chance
        yield (
            f"The next lies between {figure(series.ahead.low)} and {figure(series.ahead.high)} "
            f"at least {chance.numerator} times of {chance.denominator}."
        )


def _outside(series: Series) -> str:
    chart = series.chart
    outside, jumps = (chart.outside, chart.jumps) if chart else ((), ())
    told = [_one(series, place) for place in outside]
    told += [f"{_one(series, place)} after a leap" for place in jumps if place not in outside]
    if not told:
        return "None lies outside."
    return f"A reason to look, not a cause: {listed(told)}."


def _one(series: Series, place: int) -> str:
    point = series.points[place]
    return f"{point.code} ({figure(float(point.value))})"


def _plot(series: Series) -> PlotView | None:
    chart, shown = series.chart, series.points[-MOST_DRAWN:]
    if chart is None:
        return None
    limits = (chart.low, chart.mean, chart.high)
    ends = [*(point.value for point in shown), *map(Fraction, limits)]
    low, high = min(ends), max(ends)

    def place(value: Fraction) -> float:
        return float((value - low) / (high - low)) if high > low else 0.5

    return PlotView(
        title_of(series),
        figure(float(low)),
        figure(float(high)),
        tuple(PlotRow(f"{point.code} {point.day}", (place(point.value),)) for point in shown),
        tuple(place(Fraction(limit)) for limit in limits),
    )


def _haze_words(found: Charts) -> Iterator[str]:
    if not found.haze:
        yield (
            f"{plural(found.turned, 'batch', 'batches')} turned at a look after the making; the "
            f"time until haze takes {FEWEST_TURNED}."
        )
        return
    yield (
        f"{found.turned} turned at a look after the making. When between two looks, nobody saw "
        "(Turnbull):"
    )
    for part, watched in found.haze:
        seen = f" ({watched} watched so long)" if part.by < inf else ""
        yield f"  {part_words(part)}: {significant(100 * part.share, 2)} %{seen}"


def part_words(part: Part) -> str:
    """Return when some turned.

    >>> part_words(Part(26.0, 45.5, 0.4)), part_words(Part(45.5, inf, 0.6))
    ('after 26 d, by 45.5 d', 'not by 45.5 d')
    """
    if part.by == inf:
        return f"not by {figure(part.after, 1)} d"
    return f"after {figure(part.after, 1)} d, by {figure(part.by, 1)} d"


def _haze_plot(parts: tuple[tuple[Part, int], ...]) -> PlotView | None:
    if not parts:
        return None
    rows, whole = [], 0.0
    for part, _ in parts:
        if part.by < inf:
            whole += part.share
            rows.append(PlotRow(f"by {figure(part.by, 1)} d", (whole,)))
    return PlotView(f"{HAZE}: what turned, of all looked at later", "0 %", "100 %", tuple(rows))
