"""What is due: rests, samples to look at, dates that pass, lots on hold, complaints to answer.

Guarantees: reads only, one consistent view of the book, ordered by when it is due; what has no
time comes last. Refuses: to remind of lots that are gone and past their date.
"""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from msgspec import Struct

from ledger.domain.entries import Judge, Start
from ledger.domain.lots.lot import Lot, Status
from ledger.domain.lots.state import LotState, finished_at, latest, opener
from ledger.domain.lots.waiting import RETAINED_DAYS, ages_of, next_look, rest_is_over
from ledger.service.account.dates import with_dates
from ledger.service.account.lots import lots_by_number, lots_on_hand
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.clock import zone_on
from ledger.service.desk.control import formula_of
from ledger.service.lots.complaints import complaints_on
from ledger.store.engine.connections import Connection
from ledger.store.read.waiting import Waiting, waiting_lots

SOON_DAYS = 30
"""How many days ahead a best-before date is told of (common practice, no source)."""
GONE = frozenset({Status.STRUCK, Status.REJECTED, Status.RECALLED})
"""Where a lot stands of which no sample is looked at and no date matters any more."""


class Waits(StrEnum):
    """What a lot waits for."""

    REST = "rest"
    LOOK = "look"
    DATE = "date"
    HOLD = "hold"
    ANSWER = "answer"


class Due(Struct, frozen=True):
    """Something that is due, or will be."""

    waits: Waits
    """What the lot waits for."""
    lot: str
    """Its code."""
    name: str
    """What it is."""
    about: str
    """What the rest is for, the age of the sample, the date, why it is held, or the complaint."""
    at: datetime | None
    """When it is due, UTC; None when the book cannot tell."""
    since: datetime | None = None
    """Since when it waits, UTC."""
    number: int | None = None
    """Number of the complaint that is to be answered."""


class DueList(Struct, frozen=True):
    """All that is due."""

    now: datetime
    """The moment of reading, on the house's clock."""
    items: tuple[Due, ...]
    """What is due, by time."""


def due(book: Book) -> DueList:
    """Return all that is due, by time."""
    now = book.clock()
    with book.reading() as connection:
        zone = zone_on(connection)
        waiting = waiting_lots(connection)
        # Of others nothing is due; to look at all took twice as long with ten thousand lots.
        known = lots_on_hand(connection)
        others = sorted(waiting.lots - known.keys())
        known = with_dates(connection, known | lots_by_number(connection, others))
        items = [
            *_rests(connection, known, waiting),
            *_looks(connection, known, waiting, now.astimezone(zone)),
            *_dates(known, now.astimezone(zone).date(), zone),
            *_holds(connection, known),
            *_answers(connection, zone),
        ]
    last = datetime.max.replace(tzinfo=UTC)
    return DueList(
        now.astimezone(zone), tuple(sorted(items, key=lambda item: (item.at or last, item.lot)))
    )


def _rests(connection: Connection, known: dict[int, Lot], waiting: Waiting) -> Iterator[Due]:
    for number in waiting.resting:
        lot = known[number]
        state = lot_state(connection, lot.code, is_whole=False)
        start = latest(state, Start)
        ending = rest_is_over(state, formula_of(connection, start) if start else None)
        if ending:
            rest, over = ending
            yield Due(Waits.REST, lot.code, lot.name, str(rest.purpose), over, rest.started_at)


def _looks(
    connection: Connection, known: dict[int, Lot], waiting: Waiting, now: datetime
) -> Iterator[Due]:
    day = now.date()
    for number in waiting.retained:
        if _is_kept(known[number], day):
            state = lot_state(connection, known[number].code, is_whole=False)
            first = opener(state)
            ages = tuple(timedelta(days=days) for days in RETAINED_DAYS)
            since = first.draft.happened.at if first else None
            yield from _look(known[number], state, since, ages, now)
    for number in waiting.by_formula:
        if _is_kept(known[number], day):
            state = lot_state(connection, known[number].code, is_whole=False)
            start = latest(state, Start)
            ages = ages_of(formula_of(connection, start)) if start else ()
            yield from _look(known[number], state, finished_at(state), ages, now)


def _is_kept(lot: Lot, day: date) -> bool:
    is_in_date = lot.best_before is None or lot.best_before >= day
    return lot.status not in GONE and is_in_date


def _look(
    lot: Lot,
    state: LotState,
    since: datetime | None,
    ages: tuple[timedelta, ...],
    now: datetime,
) -> Iterator[Due]:
    upcoming = next_look(state, since, ages, now) if since else None
    if upcoming:
        age, at = upcoming
        minutes = round(age.total_seconds() / 60)
        yield Due(Waits.LOOK, lot.code, lot.name, str(minutes), at, since)


def _dates(known: dict[int, Lot], day: date, zone: ZoneInfo) -> Iterator[Due]:
    soon = day + timedelta(days=SOON_DAYS)
    for lot in known.values():
        is_there = lot.on_hand > 0 and lot.status not in GONE
        if is_there and lot.best_before and lot.best_before <= soon:
            # A date holds to the end of its day where the house stands.
            ends = datetime.combine(lot.best_before, time(23, 59), zone)
            at = ends.astimezone(UTC)
            yield Due(Waits.DATE, lot.code, lot.name, lot.best_before.isoformat(), at)


def _answers(connection: Connection, zone: ZoneInfo) -> Iterator[Due]:
    for item in complaints_on(connection):
        by = item.answer_by
        if item.is_open and by:
            at = datetime.combine(by, time(23, 59), zone).astimezone(UTC)
            since = item.entry.draft.happened.at
            yield Due(
                Waits.ANSWER, item.lot.code, item.lot.name, item.brief, at, since, item.number
            )


def _holds(connection: Connection, known: dict[int, Lot]) -> Iterator[Due]:
    for lot in known.values():
        if lot.status is Status.HELD and lot.on_hand > 0:
            state = lot_state(connection, lot.code, is_whole=False)
            judged = [e for e in state.entries if isinstance(e.facts, Judge)]
            why, since = judged[-1].draft.reason or "", judged[-1].draft.happened.at
            yield Due(Waits.HOLD, lot.code, lot.name, why, None, since)
