"""Reading times and durations as people write them.

Guarantees: a time without an offset is read on the house's clock; the offset and how exactly the
time is known are kept. Refuses: days that do not exist, words it does not know, and times and
durations of which no sum could be made.
"""

import re
from datetime import UTC, date, datetime, timedelta, tzinfo
from decimal import Decimal
from fractions import Fraction

from ledger.domain.entries import When
from ledger.domain.entries.choices import Precision
from ledger.errors import InputError, RefusedError

_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)", re.ASCII)
_TWELVE = re.compile(r"(1[0-2]|0?[1-9])(?::([0-5]\d))? ?([ap])\.?m\.?", re.ASCII | re.IGNORECASE)
_PARTED = re.compile(r"(\d{1,2})[/.](\d{1,2})[/.](\d{4})", re.ASCII)
_NAMED = {"noon": "12:00", "midnight": "00:00"}
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_PART = re.compile(r"(\d+(?:\.\d+)?) ?(min|m|hours|hour|h|days|day|d|weeks|week|w)", re.ASCII)
_MINUTES = {"m": 1, "h": 60, "d": 24 * 60, "w": 7 * 24 * 60}
LONGEST_TEXT = 60
"""The most characters a time or a duration may be written in."""
LONGEST_MINUTES = 100 * 365 * 24 * 60
"""The longest duration that is read: a hundred years."""
FIRST_YEAR, LAST_YEAR = 1900, 2999
"""Years in which a moment can lie."""
FORMS = (
    "Write 14:30, 3pm, noon, yesterday 18:00, -2h, 2026-03-02 14:30 or 2026-03-02; ~14:30 for "
    "about."
)


def read_when(text: str | None, now: datetime, zone: tzinfo) -> When:
    """Return the moment that `text` names.

    Args:
        text: What was written; None or "now" for the present.
        now: The present moment.
        zone: The zone of the house's clock.

    Raises:
        InputError: It cannot be read as a time.
        RefusedError: It names a day or hour that does not exist, or one of another age.
    """
    local_now = now.astimezone(zone)
    words = _words(text or "now", "time")
    is_about = words.startswith(("~", "about "))
    words = words.removeprefix("~").removeprefix("about ").strip()
    precision = Precision.ABOUT if is_about else Precision.EXACT
    if words == "now":
        return _when(local_now, precision)
    if words.startswith("-") and (minutes := read_minutes(words[1:], or_none=True)) is not None:
        return _when(local_now - timedelta(minutes=minutes), precision)
    words = _with_clock(words)
    day, _, clock = words.replace("T", " ", 1).partition(" ")
    _refuse_two_readings(day)
    if _CLOCK.fullmatch(words):
        return _when(_at(local_now.date(), words, zone), precision)
    on = _day(day, local_now.date())
    if on is None:
        raise InputError(f'"{words}" is not a time.', FORMS)
    if not clock:
        # In the morning the noon of today is still to come, and nothing happens later than now.
        noon = min(_at(on, "12:00", zone), local_now) if on == local_now.date() else None
        return _when(noon or _at(on, "12:00", zone), Precision.DAY)
    if _CLOCK.fullmatch(clock):
        return _when(_at(on, clock, zone), precision)
    return _when(_with_offset(words, zone), precision)


def is_repeated(when: When, zone: tzinfo) -> bool:
    """Return whether a clock of the zone showed a time of day twice, as when summer time ends."""
    if when.precision is Precision.DAY:
        return False
    shown = when.local().replace(tzinfo=zone)
    first, second = (shown.replace(fold=fold).utcoffset() for fold in (0, 1))
    is_ours = timedelta(minutes=when.offset_min) in (first, second)
    return first is not None and second is not None and first > second and is_ours


def read_day(text: str) -> date:
    """Return the day that an ISO date names.

    Raises:
        InputError: It is not of the form YYYY-MM-DD.
        RefusedError: There is no such day.
    """
    _refuse_two_readings(text.strip())
    on = _day(text.strip(), None)
    if on is None:
        raise InputError(f'"{text}" is not a date.', "Write it as 2027-06-30.")
    return on


def read_minutes(text: str, *, or_none: bool = False) -> int | None:
    """Return a duration such as 48h, 2d, 1d 6h or 30min in whole minutes, rounded half to even.

    Args:
        text: What was written.
        or_none: Whether to return None for what is no duration.

    Raises:
        InputError: It is no duration, or is longer than a hundred years.

    >>> read_minutes("1d 6h")
    1800
    """
    words = _words(text, "duration")
    parts = _PART.findall(words)
    if not parts or _PART.sub("", words).strip():
        if or_none:
            return None
        raise InputError(f'"{text}" is not a duration.', "Write it as 30min, 48h, 2d or 1d 6h.")
    minutes = round(sum(Fraction(Decimal(number)) * _MINUTES[unit[0]] for number, unit in parts))
    if minutes > LONGEST_MINUTES:
        raise InputError(
            f'"{text}" is longer than a hundred years.', "Check the number and its unit."
        )
    return minutes


def _words(text: str, what: str) -> str:
    """Return a text with its white space folded, if it is short enough to be what it should."""
    # Before anything looks into it: a long row of digits took minutes.
    if len(text) > LONGEST_TEXT:
        raise InputError(
            f"A {what} has at most {LONGEST_TEXT} characters, and this text has {len(text)}.",
            f"Write the {what} alone, and put the rest in a note.",
        )
    return " ".join(text.split())


def _with_clock(words: str) -> str:
    """Return a time with its clock from 00:00 to 23:59, where it ends in noon or in am or pm.

    >>> _with_clock("yesterday 3pm"), _with_clock("noon"), _with_clock("12:05 am")
    ('yesterday 15:00', '12:00', '00:05')
    """
    day, _, last = words.rpartition(" ")
    if clock := _NAMED.get(last.lower()):
        return f"{day} {clock}".strip()
    told = _TWELVE.search(words)
    before = words[: told.start()] if told else ""
    # An hour stands alone or after a day: of 13pm the 3pm is no time.
    if told is None or told.end() != len(words) or before.rstrip(" ") == before != "":
        return words
    hour = int(told[1]) % 12 + (12 if told[3].lower() == "p" else 0)
    return f"{before}{hour:02d}:{told[2] or '00'}"


def _refuse_two_readings(day: str) -> None:
    """Refuse a date that is one day by one custom and another by another."""
    told = _PARTED.fullmatch(day)
    if told is None:
        return
    one, other, year = (int(part) for part in told.groups())
    pairs = ((other, one), (one, other))
    days = dict.fromkeys(f"{year:04d}-{m:02d}-{d:02d}" for m, d in pairs if _is_day(year, m, d))
    if days:
        raise InputError(
            f'"{day}" could be read as {" or as ".join(days)}.'
            if len(days) > 1
            else f'"{day}" is not written as the book writes days.',
            f"Write it as {' or '.join(days)}.",
        )


def _is_day(year: int, month: int, day: int) -> bool:
    try:
        date(year, month, day)
    except ValueError:
        return False
    return True


def _day(text: str, today: date | None) -> date | None:
    if today and text in ("today", "yesterday"):
        return today - timedelta(days=text == "yesterday")
    if not _DAY.fullmatch(text):
        return None
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        raise RefusedError(
            f"There is no day {text} in the calendar.", "Look at the calendar and write it again."
        ) from error


def _at(on: date, clock: str, zone: tzinfo) -> datetime:
    hour, minute = clock.split(":")
    return _shown(datetime(on.year, on.month, on.day, int(hour), int(minute), tzinfo=zone))


def _with_offset(text: str, zone: tzinfo) -> datetime:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError as error:
        raise InputError(f'"{text}" is not a time.', FORMS) from error
    return _of_our_age(moment) if moment.tzinfo else _shown(moment.replace(tzinfo=zone))


def _shown(moment: datetime) -> datetime:
    """Return the moment if its clock ever showed it."""
    back = _of_our_age(moment).astimezone(UTC).astimezone(moment.tzinfo)
    # An hour that summer time skips comes back as another; fold only tells two equal hours apart.
    if back.replace(fold=0) != moment.replace(fold=0):
        raise RefusedError(
            f"The clocks skip {moment:%H:%M} on {moment:%Y-%m-%d}, when summer time begins.",
            "Give the time that the clock really showed.",
        )
    return moment


def _of_our_age(moment: datetime) -> datetime:
    """Return the moment if clocks and calendars can reckon with it."""
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise RefusedError(
            f"A time in the year {moment.year:04d} cannot be.",
            f"Look at the year again: it lies between {FIRST_YEAR} and {LAST_YEAR}.",
        )
    return moment


def _when(moment: datetime, precision: Precision) -> When:
    offset = moment.utcoffset() or timedelta()
    return When(
        moment.astimezone(UTC).replace(microsecond=0),
        round(offset.total_seconds() / 60),
        precision,
    )
