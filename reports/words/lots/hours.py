"""The bar of a batch's time: its rests, chills, filters and looks, as places along a line.

Guarantees: everything that is told with a time stands where it was; a rest that goes on ends where
the batch does.
"""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from ledger.domain.entries import Entry, Filter, Finish, Look, Rest
from ledger.domain.lots.state import LotState, finished_at, opener
from reports.views.lots import TimeBar, TimeSpan

LEAST = timedelta(hours=1)
"""A batch that took less has no bar."""
MOST_TICKS = 7
"""Days that are named along a bar."""


def time_bar(state: LotState) -> TimeBar | None:
    """Return the bar of a batch from its begin to its end; None where too little is told."""
    first, done = opener(state), finished_at(state)
    if first is None or done is None:
        return None
    start = first.draft.happened.at
    if done - start < LEAST:
        return None
    return TimeBar(tuple(_spans(state, start, done)), tuple(_ticks(first, done)))


def _spans(state: LotState, start: datetime, done: datetime) -> Iterator[TimeSpan]:
    told = {e.facts.began for e in state.entries if isinstance(e.facts, Rest)}
    for entry in state.entries:
        at, facts = entry.draft.happened.at, entry.facts
        if at > done:
            return
        match facts:
            case Rest(purpose=purpose, started_at=begun, ended_at=ended):
                if entry.stands_for not in told:
                    yield _span(str(purpose), begun, min(ended or done, done), start, done)
            case Filter(minutes=minutes):
                begun = at - timedelta(minutes=minutes or 0)
                yield _span("filter", begun, at, start, done)
            case Look() | Finish():
                yield _span(str(facts.KIND), at, at, start, done)


def _span(sort: str, begun: datetime, ended: datetime, start: datetime, done: datetime) -> TimeSpan:
    whole = done - start
    left, right = ((max(moment, start) - start) / whole for moment in (begun, ended))
    return TimeSpan(sort, left, max(left, right))


def _ticks(first: Entry, done: datetime) -> Iterator[tuple[float, str]]:
    """Yield midnights along the bar, no more than have room."""
    start = first.draft.happened.at
    zone = first.draft.happened.local().tzinfo or UTC
    yield 0.0, f"{start.astimezone(zone):%Y-%m-%d %H:%M}"
    days = max((done - start).days, 1)
    step = -(-days // MOST_TICKS)
    midnight = start.astimezone(zone).replace(hour=0, minute=0, second=0, microsecond=0)
    for number in range(1, days + 2, step):
        place = (midnight + timedelta(days=number) - start) / (done - start)
        # Beside either end there is no room for the words.
        if LEFT_ROOM < place < RIGHT_ROOM:
            yield place, f"{midnight + timedelta(days=number):%m-%d}"
    yield 1.0, f"{done.astimezone(zone):%Y-%m-%d %H:%M}"


LEFT_ROOM, RIGHT_ROOM = 0.17, 0.83
"""Where along a bar there is room for a day between the words at its ends."""
