"""What is due, in words, with a countdown.

Guarantees: the nearest first; each line says what to do. Refuses: colours that carry a meaning.
"""

from datetime import datetime, timedelta

from ledger.service.lots.due import Due, DueList, Waits
from reports.kit.format import duration, plural

DAYS = frozenset({Waits.DATE, Waits.ANSWER})
"""What is due on a day, at no moment of it."""
LONG_PAST = timedelta(days=30)
"""From when on what was due is folded into a line (common practice, no source)."""
HEADS = ("due", "when", "lot", "what", "to do")


def countdown(at: datetime | None, now: datetime) -> str:
    """Return how long it is until a moment, or since.

    >>> from datetime import UTC
    >>> countdown(datetime(2026, 3, 2, 12, tzinfo=UTC), datetime(2026, 3, 2, 9, 30, tzinfo=UTC))
    'in 2 h 30 min'
    """
    if at is None:
        return "–"
    return (
        f"in {_between(now, at)}" if minutes_between(now, at) >= 0 else f"{_between(at, now)} ago"
    )


def minutes_between(since: datetime, until: datetime) -> int:
    """Return the minutes from one moment to another, rounded."""
    return round((until - since).total_seconds() / 60)


def _between(since: datetime, until: datetime) -> str:
    """Return a span in words, from two days on in whole days."""
    minutes = minutes_between(since, until)
    return duration(minutes // 1440 * 1440 if minutes >= 2 * 1440 else minutes)


def todo(item: Due, now: datetime) -> str:
    """Return what to do about something that is due."""
    match item.waits:
        case Waits.REST:
            lasted = f", {_between(item.since, now)} so far" if item.since else ""
            return f"rest to {item.about}{lasted}"
        case Waits.LOOK:
            return f"look at the sample, {duration(int(item.about))} old"
        case Waits.DATE:
            is_past = item.at is not None and item.at < now
            return "past its date: reject it" if is_past else "use it first: its date comes"
        case Waits.HOLD:
            return f"on hold: {item.about or 'decide about it'}"
        case Waits.ANSWER:
            return f"answer complaint {item.number}: {item.about}"


def folded(due_list: DueList) -> tuple[DueList, tuple[Due, ...]]:
    """Return what wants doing now or later, and apart from it looks and dates long past.

    A rest that goes on and a complaint that waits want doing however late it is.
    """
    before = due_list.now - LONG_PAST
    past = tuple(
        item
        for item in due_list.items
        if item.waits in _NAMED and item.at is not None and item.at < before
    )
    left = tuple(item for item in due_list.items if item not in past)
    return DueList(due_list.now, left), past


def past_line(past: tuple[Due, ...]) -> str:
    """Return a line that says how much is long past, and how to see it."""
    kinds = dict.fromkeys(item.waits for item in past)
    told = [plural(sum(item.waits is kind for item in past), *_NAMED[kind]) for kind in kinds]
    listed = "pottle due --all lists them."
    return f"Long past, {LONG_PAST.days} days or more: {', '.join(told)}; {listed}"


_NAMED = {Waits.LOOK: ("look", "looks"), Waits.DATE: ("date", "dates")}
"""What is folded once it is long past."""


def rows(due_list: DueList) -> list[tuple[str, ...]]:
    """Return a row for each thing that is due."""
    return [
        (
            countdown(item.at, due_list.now),
            _when(item, due_list.now),
            item.lot,
            item.name,
            todo(item, due_list.now),
        )
        for item in due_list.items
    ]


def _when(item: Due, now: datetime) -> str:
    """Return when something is due: of a date the day, as it is no moment."""
    if item.at is None:
        return ""
    local = item.at.astimezone(now.tzinfo)
    return f"{local:%Y-%m-%d}" if item.waits in DAYS else f"{local:%Y-%m-%d %H:%M}"
