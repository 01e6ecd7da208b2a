"""Days in a maker's tables, in the order in which she writes them.

Guarantees: a day comes out as the book writes it, 2026-02-03; year first is always understood.
Refuses: to guess where two readings exist and no order is told, and days that are none in the
order that is.
"""

import re
import unicodedata
from datetime import date
from enum import StrEnum

from ledger.errors import InputError

_DAY = re.compile(r"(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})(?:[ T,]+(.+))?", re.ASCII)
_CLOCK = re.compile(r"(\d{1,2})[:.hH](\d{2})(?::\d{2}(?:\.\d+)?)?(?:\s*(?:Uhr|h))?", re.ASCII)
_HOUR = re.compile(r"(\d{1,2})\s*(?:Uhr|h)", re.ASCII)


_MONTH_BETWEEN = re.compile(
    r"(\d{1,4})\.?[\s./-]*(?:de )?([^\W\d_]{3,10})\.?[\s./-]*(?:de )?(\d{2,4})(?:[ T,]+(.+))?"
)
_MONTH_FIRST = re.compile(r"([^\W\d_]{3,10})\.? (\d{1,2}),? (\d{4})")
MONTHS = (
    *(("jan", "ene", "gen", "sty"), ("feb", "fev", "lut"), ("mar", "mrz", "maa", "mrt")),
    *(("apr", "avr", "abr", "kwi"), ("mai", "may", "mag", "mei", "maj")),
    *(("jun", "juin", "giu", "cze"), ("jul", "juil", "lug", "lip"), ("aug", "aou", "ago", "sie")),
    *(("sep", "set", "wrz"), ("oct", "okt", "ott", "out", "paz"), ("nov", "lis")),
    ("dec", "dez", "dic", "des", "gru"),
)
"""How the months begin in English, German, French, Spanish, Italian, Dutch, Portuguese, Polish and
the languages of Scandinavia (from memory)."""


class DayOrder(StrEnum):
    """In which order day, month and year stand."""

    DMY = "dmy"
    """Day first: 3.2.2026."""
    MDY = "mdy"
    """Month first: 2/3/2026."""
    YMD = "ymd"
    """Year first: 26-02-03."""


def plain_day(text: str, order: DayOrder | None) -> str:
    """Return a day, with its clock if it has one, as the book writes it; other text as it is.

    A year of two digits is one of this century.

    Args:
        text: What is written.
        order: The order that was told; None: none was.

    Raises:
        InputError: It could be read in two ways, or is no day in the order that was told.

    >>> plain_day("3.2.2026 14:30", DayOrder.DMY), plain_day("2026-02-03 00:00:00", None)
    ('2026-02-03 14:30', '2026-02-03')
    >>> plain_day("13/02/2026 9h15", None), plain_day("yesterday", None)
    ('2026-02-13 09:15', 'yesterday')
    >>> plain_day("3. Februar 2026", None), plain_day("03-févr-26", DayOrder.DMY)
    ('2026-02-03', '2026-02-03')
    """
    found = _numbered(text.strip()) or _named(text.strip())
    if found is None:
        return _not_a_number(text.strip())
    readings, clock = found
    days = list(dict.fromkeys(day for day in readings.values() if day))
    if order in readings and len(readings) > 1:
        day = readings[order]
        if day is None:
            raise InputError(
                f'"{text}" is no day in the order {order}.',
                "Write it in that order, or as 2026-02-03.",
            )
    elif len(days) > 1:
        orders = [str(each) for each, read in readings.items() if read]
        raise InputError(
            f'"{text}" could be {" or ".join(days)}.',
            f"Say which with --dates {' or --dates '.join(orders)}.",
        )
    elif not days:
        raise InputError(
            f'"{text}" is no day of the calendar.', "Write it as the calendar has it: 2026-02-03."
        )
    else:
        day = days[0]
    return f"{day} {clock}".strip()


Readings = dict[DayOrder | None, str | None]
"""The days that a text may mean, by the order; None: in whatever order."""


def _numbered(text: str) -> tuple[Readings, str] | None:
    told = _DAY.fullmatch(text)
    if told is None:
        return None
    parts, clock = (told[1], told[3], told[4]), plain_clock(told[5] or "")
    orders = (DayOrder.YMD,) if len(told[1]) == 4 else tuple(DayOrder)
    return {order: _read(parts, order) for order in orders}, clock


def _named(text: str) -> tuple[Readings, str] | None:
    """Return the days that a text with the name of a month may mean, and its clock."""
    if told := _MONTH_FIRST.fullmatch(text):
        month, one, other = month_of(told[1]), told[2], told[3]
    elif told := _MONTH_BETWEEN.fullmatch(text):
        month, one, other = month_of(told[2]), told[1], told[3]
    else:
        return None
    if month is None:
        return None
    dated = (one, str(month), other)
    readings: Readings = {DayOrder.DMY: _read(dated, DayOrder.DMY)}
    if len(other) == 2:
        readings[DayOrder.YMD] = _read(dated, DayOrder.YMD)
    clock = plain_clock(told[4] or "") if told.re is _MONTH_BETWEEN else ""
    return readings, clock


def month_of(name: str) -> int | None:
    """Return the number of a month by its name or the beginning of it, or None.

    >>> month_of("févr"), month_of("März"), month_of("Juli"), month_of("juin"), month_of("lot")
    (2, 3, 7, 6, None)
    """
    apart = unicodedata.normalize("NFKD", name.casefold())
    bare = "".join(letter for letter in apart if not unicodedata.combining(letter))
    found = (number for number, heads in enumerate(MONTHS, 1) if bare.startswith(heads))
    return next(found, None)


def plain_clock(text: str) -> str:
    """Return a time of day as the book writes it; midnight to the second is a day alone.

    >>> plain_clock("9h15"), plain_clock("14.30 Uhr"), plain_clock("00:00:00"), plain_clock("noon")
    ('09:15', '14:30', '', 'noon')
    """
    if text.startswith("00:00:00"):
        return ""
    if hour := _HOUR.fullmatch(text.strip()):
        return f"{int(hour[1]):02d}:00"
    told = _CLOCK.fullmatch(text.strip())
    return f"{int(told[1]):02d}:{told[2]}" if told else text


def _not_a_number(text: str) -> str:
    if re.fullmatch(r"\d{4,6}(?:\.\d+)?", text, re.ASCII):
        raise InputError(
            f'"{text}" is a number, where a day was expected.',
            "Format the cells of the column as dates in the spreadsheet, and save it again.",
        )
    return text


def _read(parts: tuple[str, str, str], order: DayOrder) -> str | None:
    told = dict(zip(order.value, parts, strict=True))
    year = told["y"]
    if len(year) not in (2, 4) or len(told["d"]) > 2:
        return None
    try:
        return date(
            int(year) + (2000 if len(year) == 2 else 0), int(told["m"]), int(told["d"])
        ).isoformat()
    except ValueError:
        return None
