"""How batches turned out one after the other, for machines: figures as decimals in text."""

from math import inf

from ledger.service.causes.chart import Charts, Series
from reports.json.kit.answer import Answer, Code, Figure
from reports.views.causes import ChartView
from reports.words.causes.chart import title_of
from reports.words.causes.odds import decimal


class PointTold(Answer, frozen=True):
    """One figure of one batch."""

    code: Code
    """The batch."""
    begun_on: str
    """The day it was begun, UTC."""
    figure: Figure
    """The figure."""


class LimitsTold(Answer, frozen=True):
    """What the figures do by themselves: individuals and moving ranges."""

    mean: Figure
    """Their mean."""
    low: Figure
    """Lower limit of a figure."""
    high: Figure
    """Upper limit of a figure."""
    greatest_step: Figure
    """Upper limit of the difference of neighbours."""
    outside_codes: tuple[Code, ...]
    """Batches outside the limits."""
    leap_codes: tuple[Code, ...]
    """Batches that differ from the one before by more than the limit."""


class NextTold(Answer, frozen=True):
    """Between which figures the next batch lies."""

    low: Figure
    """Lower end."""
    high: Figure
    """Upper end."""
    inside: int
    """So many times at least the next lies between them"""
    of: int
    """of so many."""


class SeriesTold(Answer, frozen=True):
    """One figure of batch after batch."""

    figure: str
    """What it is, with its unit."""
    points: tuple[PointTold, ...]
    """The batches it is known of, in the order they were begun."""
    limits: LimitsTold | None
    """Limits; null where there are too few."""
    next: NextTold | None
    """Where the next lies; null where there are too few."""


class ShareTold(Answer, frozen=True):
    """How many failed, and what share of such batches does."""

    failed: int
    """How many looked worse than wanted, or came back,"""
    seen: int
    """of so many that were looked at or sent."""
    low: Figure
    """The least share, from 0 to 1 (exact, 95 %)."""
    high: Figure
    """The most."""


class TurnedTold(Answer, frozen=True):
    """A span of ages in which some of the batches turned."""

    after_days: Figure
    """Its beginning."""
    by_days: Figure | None
    """Its end; null where they did not turn as long as they were seen."""
    share: Figure
    """The share of all that turned in it."""
    watched: int
    """How many were looked at beyond its beginning."""


class ChartAnswer(Answer, frozen=True):
    """How the batches of a product or of a kind turned out."""

    of: str
    """The product or the kind."""
    batches: int
    """How many were made for sale."""
    failing: ShareTold | None
    """How many failed; null where nobody looked at any."""
    series: tuple[SeriesTold, ...]
    """Each figure that is known of any of them."""
    turned: tuple[TurnedTold, ...]
    """At which ages they turned; empty where there are too few."""
    sentences: tuple[str, ...]
    """What it comes to, a line each."""
    path: str | None
    """Where its paper is; null when none was written."""


class ChartableTold(Answer, frozen=True):
    """A product that can be charted."""

    product: str
    """The product."""
    product_kind: str
    """Its kind."""
    batches: int
    """How many batches were made for sale."""


def chart_answer(found: Charts, view: ChartView, path: str | None) -> ChartAnswer:
    """Return how batches turned out."""
    return ChartAnswer(
        of=found.of,
        batches=found.batches,
        failing=_failing(found),
        series=tuple(_series(item) for item in found.series),
        turned=tuple(
            TurnedTold(
                _told(part.after),
                None if part.by == inf else _told(part.by),
                _told(part.share),
                watched,
            )
            for part, watched in found.haze
        ),
        sentences=(
            *view.lines,
            *(f"{item.title}: {line}" for item in view.figures for line in item.words),
        ),
        path=path,
    )


def _failing(found: Charts) -> ShareTold | None:
    if found.share is None:
        return None
    return ShareTold(found.failed, found.seen, *map(_told, found.share))


def _series(series: Series) -> SeriesTold:
    chart, ahead = series.chart, series.ahead
    codes = [point.code for point in series.points]
    return SeriesTold(
        figure=title_of(series),
        points=tuple(
            PointTold(point.code, point.day, _told(float(point.value))) for point in series.points
        ),
        limits=LimitsTold(
            mean=_told(chart.mean),
            low=_told(chart.low),
            high=_told(chart.high),
            greatest_step=_told(chart.most_range),
            outside_codes=tuple(codes[place] for place in chart.outside),
            leap_codes=tuple(codes[place] for place in chart.jumps),
        )
        if chart
        else None,
        next=NextTold(
            _told(ahead.low), _told(ahead.high), ahead.chance.numerator, ahead.chance.denominator
        )
        if ahead
        else None,
    )


def _told(value: float) -> str:
    return decimal(value) or "0"
