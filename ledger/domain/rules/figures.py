"""Figures as the sentences of rules say them.

Guarantees: exact figures in the units that people write. Refuses: to round what decides.
"""

from collections.abc import Callable
from datetime import timedelta
from decimal import Decimal

MOST_PLACES = 12
"""Decimals of a per cent beyond which no share is told from its limit."""


def _plain(value: Decimal | int, scale: int = 1) -> str:
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


def per_cent_exactly(mpct: int) -> str:
    """Return a share to the last figure that is kept, for a limit.

    >>> per_cent_exactly(50), per_cent_exactly(80_000)
    ('0.05 %', '80 %')
    """
    return f"{_plain(mpct, 1000)} %"


def share_exactly(ppm: int) -> str:
    """Return a share in parts per million as a per cent, to the last figure that is kept.

    >>> share_exactly(985_000)
    '98.5 %'
    """
    return f"{_plain(ppm, 10_000)} %"


def per_cent_outside(mpct: float, low: int | None, high: int | None) -> str:
    """Return a share that lies outside two ends, with so many decimals that this is seen.

    One where that is enough, else three, else as many as it takes.

    >>> per_cent_outside(79_978, 80_000, None), per_cent_outside(81_250, 82_000, None)
    ('79.978 %', '81.2 %')
    >>> per_cent_outside(500.0004, None, 500), per_cent_outside(500, None, 500)
    ('0.5000004 %', '0.5 %')
    >>> per_cent_outside(83_000.4, None, 82_000), per_cent_outside(100_000, None, 82_000)
    ('83 %', '100 %')
    """
    near = (round(Decimal(mpct) / 1000, places) for places in (1, *range(3, MOST_PLACES)))
    seen = (share for share in near if _is_outside(1000 * share, low, high))
    return f"{_plain(next(seen, Decimal(round(mpct)) / 1000))} %"


def _is_outside(mpct: Decimal, low: int | None, high: int | None) -> bool:
    return (low is not None and mpct < low) or (high is not None and mpct > high)


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
    >>> span(None, 2880, time_of), span(0, 0, time_of), span(None, None, time_of)
    ('at most 2 d', '0 min to 0 min', '')
    """
    if low is not None and high is not None:
        return f"{shown(low)} to {shown(high)}"
    if low is not None:
        return f"at least {shown(low)}"
    return f"at most {shown(high)}" if high is not None else ""
