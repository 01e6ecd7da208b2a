"""Times as people write them, on the clock of the house."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest

from ledger.domain.entries.choices import Precision
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.desk.times import FORMS, is_repeated, read_day, read_minutes, read_when

DUBLIN = ZoneInfo("Europe/Dublin")
SUMMER_NOON = datetime(2026, 7, 15, 11, 20, 30, 999, tzinfo=UTC)
"""12:20:30 on the clock in Dublin, an hour ahead in summer."""


@pytest.mark.parametrize(
    ("text", "at", "offset_min", "precision"),
    [
        (None, "2026-07-15 11:20:30", 60, "exact"),
        ("", "2026-07-15 11:20:30", 60, "exact"),
        ("now", "2026-07-15 11:20:30", 60, "exact"),
        ("~now", "2026-07-15 11:20:30", 60, "about"),
        ("-2h", "2026-07-15 09:20:30", 60, "exact"),
        ("-1d 6h", "2026-07-14 05:20:30", 60, "exact"),
        ("about -30min", "2026-07-15 10:50:30", 60, "about"),
        ("9:05", "2026-07-15 08:05:00", 60, "exact"),
        ("14:30", "2026-07-15 13:30:00", 60, "exact"),
        ("~ 09:05", "2026-07-15 08:05:00", 60, "about"),
        ("yesterday 18:00", "2026-07-14 17:00:00", 60, "exact"),
        ("noon", "2026-07-15 11:00:00", 60, "exact"),
        ("~yesterday noon", "2026-07-14 11:00:00", 60, "about"),
        ("3pm", "2026-07-15 14:00:00", 60, "exact"),
        ("2026-03-02 9:05 AM", "2026-03-02 09:05:00", 0, "exact"),
        ("12 a.m.", "2026-07-14 23:00:00", 60, "exact"),
        ("today 08:00", "2026-07-15 07:00:00", 60, "exact"),
        ("  2026-03-02   14:30 ", "2026-03-02 14:30:00", 0, "exact"),
        ("2026-03-02T14:30", "2026-03-02 14:30:00", 0, "exact"),
        ("2026-03-02 14:30+02:00", "2026-03-02 12:30:00", 120, "exact"),
        ("2026-03-02T14:30:15Z", "2026-03-02 14:30:15", 0, "exact"),
        ("2026-03-02 14:30:15", "2026-03-02 14:30:15", 0, "exact"),
        ("2026-03-02", "2026-03-02 12:00:00", 0, "day"),
        ("~2026-03-02", "2026-03-02 12:00:00", 0, "day"),
        ("yesterday", "2026-07-14 11:00:00", 60, "day"),
        ("today", "2026-07-15 11:00:00", 60, "day"),
        ("2026-03-29 00:59", "2026-03-29 00:59:00", 0, "exact"),
        ("2026-03-29 02:00", "2026-03-29 01:00:00", 60, "exact"),
        ("2026-10-25 01:30", "2026-10-25 00:30:00", 60, "exact"),
        ("2026-10-25 02:00", "2026-10-25 02:00:00", 0, "exact"),
    ],
)
def test_a_time_is_read_on_the_clock_of_the_house(
    text: str | None, at: str, offset_min: int, precision: str
) -> None:
    """Of the hour that comes twice when summer time ends, the first is meant."""
    when = read_when(text, SUMMER_NOON, DUBLIN)
    assert when.at == datetime.fromisoformat(at).replace(tzinfo=UTC)
    assert (when.offset_min, when.precision) == (offset_min, Precision(precision))


def test_today_without_an_hour_is_never_later_than_now() -> None:
    morning = datetime(2026, 7, 15, 6, 0, tzinfo=UTC)
    assert read_when("today", morning, DUBLIN).at == morning


@pytest.mark.parametrize(
    ("text", "error", "problem"),
    [
        ("half past two", InputError, ('"half past two" is not a time.', FORMS)),
        ("25:00", InputError, ('"25:00" is not a time.', FORMS)),
        ("14.30", InputError, ('"14.30" is not a time.', FORMS)),
        ("-2 moons", InputError, ('"-2 moons" is not a time.', FORMS)),
        (
            "-9999999999h",
            InputError,
            ('"9999999999h" is longer than a hundred years.', "Check the number and its unit."),
        ),
        (
            "0001-01-01",
            RefusedError,
            (
                "A time in the year 0001 cannot be.",
                "Look at the year again: it lies between 1900 and 2999.",
            ),
        ),
        (
            "9999-12-31 23:59-02:00",
            RefusedError,
            (
                "A time in the year 9999 cannot be.",
                "Look at the year again: it lies between 1900 and 2999.",
            ),
        ),
        ("14:30\x1b[31m", InputError, ('"14:30U+001B[31m" is not a time.', FORMS)),
        (
            "2026-02-30",
            RefusedError,
            (
                "There is no day 2026-02-30 in the calendar.",
                "Look at the calendar and write it again.",
            ),
        ),
        (
            "2026-03-29 01:30",
            RefusedError,
            (
                "The clocks skip 01:30 on 2026-03-29, when summer time begins.",
                "Give the time that the clock really showed.",
            ),
        ),
        (
            "2026-03-29 01:30:00",
            RefusedError,
            (
                "The clocks skip 01:30 on 2026-03-29, when summer time begins.",
                "Give the time that the clock really showed.",
            ),
        ),
    ],
)
def test_what_is_no_time_is_refused(
    text: str, error: type[LedgerError], problem: tuple[str, str]
) -> None:
    with pytest.raises(error) as raised:
        read_when(text, SUMMER_NOON, DUBLIN)
    assert raised.value.problems == (problem,)
    assert type(raised.value) is error


def test_a_day_is_read() -> None:
    assert read_day(" 2028-02-29 ") == date(2028, 2, 29)


@pytest.mark.parametrize(
    ("text", "error", "problem"),
    [
        ("today", InputError, ('"today" is not a date.', "Write it as 2027-06-30.")),
        (
            "２０２７-06-30",
            InputError,
            ('"２０２７-06-30" is not a date.', "Write it as 2027-06-30."),
        ),
        (
            "2027-02-29",
            RefusedError,
            (
                "There is no day 2027-02-29 in the calendar.",
                "Look at the calendar and write it again.",
            ),
        ),
    ],
)
def test_what_is_no_day_is_refused(
    text: str, error: type[LedgerError], problem: tuple[str, str]
) -> None:
    with pytest.raises(error) as raised:
        read_day(text)
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("30min", 30),
        ("30 min", 30),
        ("30m", 30),
        ("48h", 2880),
        ("1.5 hours", 90),
        ("1 hour", 60),
        ("2d", 2880),
        ("1 day 6 hours", 1800),
        ("1d6h", 1800),
        ("3 weeks", 30240),
        ("1w 1d", 11520),
    ],
)
def test_a_duration_is_read_in_minutes(text: str, minutes: int) -> None:
    assert read_minutes(text) == minutes


@pytest.mark.parametrize("text", ["", "48", "h", "2 years", "2h or so", "-2h", "1,5h", "2h 3"])
def test_what_is_no_duration_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_minutes(text)
    assert raised.value.problems == (
        (f'"{text}" is not a duration.', "Write it as 30min, 48h, 2d or 1d 6h."),
    )
    assert read_minutes(text, or_none=True) is None


READERS: dict[str, Callable[[str], object]] = {
    "time": lambda text: read_when(text, SUMMER_NOON, DUBLIN),
    "duration": read_minutes,
}


@pytest.mark.parametrize("what", READERS)
def test_a_text_too_long_for_a_time_or_a_duration_is_refused(what: str) -> None:
    with pytest.raises(InputError) as raised:
        READERS[what]("9" * 100_000)
    assert raised.value.problems == (
        (
            f"A {what} has at most 60 characters, and this text has 100000.",
            f"Write the {what} alone, and put the rest in a note.",
        ),
    )


def test_a_duration_is_no_longer_than_a_century() -> None:
    assert read_minutes("36500d") == 36500 * 24 * 60
    with pytest.raises(InputError) as raised:
        read_minutes("36500d 1min")
    assert raised.value.problems == (
        ('"36500d 1min" is longer than a hundred years.', "Check the number and its unit."),
    )


@pytest.mark.parametrize(
    ("at", "is_twice"),
    [
        ("2026-10-25T00:30", False),
        ("2026-10-25T01:30+01:00", True),
        ("2026-10-25T01:30+00:00", True),
        ("2026-10-25T02:00", False),
        ("2026-10-25", False),
        ("2026-03-29T02:30", False),
    ],
)
def test_an_hour_that_the_clock_showed_twice_is_known(at: str, is_twice: bool) -> None:
    """Summer time ends on the last Sunday of October at 1:00 UTC (Directive 2000/84/EC)."""
    when = read_when(at, datetime(2026, 12, 1, tzinfo=UTC), DUBLIN)
    assert is_repeated(when, DUBLIN) is is_twice


@pytest.mark.parametrize(
    ("text", "what", "todo"),
    [
        (
            "12/11/2026",
            '"12/11/2026" could be read as 2026-11-12 or as 2026-12-11.',
            "Write it as 2026-11-12 or 2026-12-11.",
        ),
        (
            "25.3.2026",
            '"25.3.2026" is not written as the book writes days.',
            "Write it as 2026-03-25.",
        ),
    ],
)
def test_a_day_that_two_customs_read_in_two_ways_is_refused_with_both(
    text: str, what: str, todo: str
) -> None:
    readers: tuple[Callable[[], object], ...] = (
        lambda: read_day(text),
        lambda: read_when(f"{text} 14:30", SUMMER_NOON, DUBLIN),
    )
    for reader in readers:
        with pytest.raises(InputError) as raised:
            reader()
        assert raised.value.problems == ((what, todo),)


@pytest.mark.parametrize("text", ["13pm", "0am", "3 pm yesterday", "5x3pm", "31/31/2026"])
def test_what_only_looks_like_a_time_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_when(text, SUMMER_NOON, DUBLIN)
    assert raised.value.problems[0][1] == FORMS
