"""Figures as the sentences of rules say them.

Guarantees: exact figures in the units that people write. Refuses: to round what decides.
"""

from collections.abc import Callable
from datetime import timedelta
from decimal import Decimal


def _plain(value: int, scale: int) -> str:
    text = f"{Decimal(value) / scale:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def degrees(mdegc: int) -> str:
    """Return a temperature.

    >>> degrees(-18_500)
    '−18.5 °C'
    """
    return f"{_plain(mdegc, 1000)} °C".replace("-", "−")


def microns(nm: int) -> str:
    """Return a pore size.

    >>> microns(2500)
    '2.5 µm'
    """
    return f"{_plain(nm, 1000)} µm"


def per_cent(mpct: int) -> str:
    """Return a share, with one decimal.

    >>> per_cent(81_250), per_cent(85_000)
    ('81.2 %', '85 %')
    """
    return f"{_plain(round(mpct, -2), 1000)} %"


def per_cent_exactly(mpct: int) -> str:
    """Return a share to the last figure that is kept, for a limit.

    >>> per_cent_exactly(50), per_cent_exactly(80_000)
    ('0.05 %', '80 %')
    """
    return f"{_plain(mpct, 1000)} %"


def per_cent_outside(mpct: int, low: int | None, high: int | None) -> str:
    """Return a share that lies outside two ends, exactly where one decimal would hide that.

    >>> per_cent_outside(79_978, 80_000, None), per_cent_outside(81_250, 82_000, None)
    ('79.978 %', '81.2 %')
    """
    near = round(mpct, -2)
    is_seen = (low is not None and near < low) or (high is not None and near > high)
    return per_cent(mpct) if is_seen else per_cent_exactly(mpct)


def time_of(minutes: int) -> str:
    """Return a length of time.

    >>> time_of(90), time_of(7 * 24 * 60)
    ('1 h 30 min', '7 d')
    """
    return _time(60 * minutes) or "0 min"


def is_outside(lasted: timedelta, low: int | None, high: int | None) -> bool:
    """Return whether a time lies outside two ends, each in whole minutes, to the second."""
    is_short = low is not None and lasted < timedelta(minutes=low)
    return is_short or (high is not None and lasted > timedelta(minutes=high))


def time_outside(lasted: timedelta, low: int | None, high: int | None) -> str:
    """Return a time that lies outside two ends, with seconds where minutes would hide that.

    >>> time_outside(timedelta(hours=23, seconds=20), 1440, None)
    '23 h'
    >>> time_outside(timedelta(hours=23, minutes=59, seconds=40), 1440, None)
    '23 h 59 min 40 s'
    """
    seconds = round(lasted.total_seconds())
    minutes = round(seconds / 60)
    is_seen = is_outside(timedelta(minutes=minutes), low, high)
    return time_of(minutes) if is_seen else _time(seconds)


def _time(seconds: int) -> str:
    parts = []
    for unit, length in (("d", 86_400), ("h", 3600), ("min", 60), ("s", 1)):
        number, seconds = divmod(seconds, length)
        if number:
            parts.append(f"{number} {unit}")
    return " ".join(parts)


def span(low: int | None, high: int | None, shown: Callable[[int], str]) -> str:
    """Return the words for two ends of which one may be missing.

    >>> span(1440, None, time_of), span(1440, 2880, time_of)
    ('at least 1 d', '1 d to 2 d')
    """
    if low is not None and high is not None:
        return f"{shown(low)} to {shown(high)}"
    if low is not None:
        return f"at least {shown(low)}"
    return f"at most {shown(high)}" if high is not None else ""
