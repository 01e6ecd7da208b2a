"""The clarity of a lot over its days: a strip of readings, and its looks as rows.

Guarantees: every look stands in the rows, struck ones too; only readings in force stand in the
strip, on a logarithmic scale.

References:
    Ph. Eur. 2.2.1: a liquid is clear when it is not more opalescent than reference suspension I,
    which has 3 NTU (read).
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from math import log10

from ledger.domain.entries import Entry, Look
from ledger.domain.entries.choices import Grade
from ledger.domain.lots.state import finished_at, opener
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, duration, initials, scaled
from reports.views.lots import ClarityPoint, ClarityStrip, LookRow
from reports.words.entries.bench import looked_at_words

CLEAR_MILLI = 3000
"""The most that still is clear, in thousandths of an NTU."""
DECADES = (100, 1000, 10_000, 100_000, 1_000_000)
"""Where the scale may begin and end, in thousandths of an NTU."""
CLEAR = (Grade.BRIGHT, Grade.CLEAR)
"""Grades for which a figure says what is wanted."""
FLAGS = ("ring", "louche", "sediment", "floc", "crystals")
"""What may be seen besides."""


def look_rows(dossier: Dossier) -> tuple[LookRow, ...]:
    """Return the looks at a lot, in order."""
    since = finished_at(dossier.state)
    return tuple(
        _row(said.entry, said.entry.facts, since, is_struck=said.corrected_by is not None)
        for said in dossier.said
        if isinstance(said.entry.facts, Look)
    )


def _row(entry: Entry, look: Look, since: datetime | None, *, is_struck: bool) -> LookRow:
    minutes = look.age_minutes
    if minutes is None and since and entry.draft.happened.at >= since:
        minutes = int((entry.draft.happened.at - since) / timedelta(minutes=1))
    seen = ", ".join(part for part in (looked_at_words(look.looked_at), look.dilution) if part)
    flags = [flag for flag in FLAGS if getattr(look, flag)]
    return LookRow(
        entry=str(entry.seq),
        when=clock(entry.draft.happened),
        age=duration(minutes - minutes % 60 if minutes >= 24 * 60 else minutes) if minutes else "",
        seen=seen,
        grade=str(look.grade),
        ntu="" if look.ntu_milli is None else scaled(look.ntu_milli, 1000),
        words=", ".join([*flags, *([look.words] if look.words else [])]),
        by=initials(entry),
        struck=is_struck,
    )


def clarity_strip(dossier: Dossier) -> ClarityStrip | None:
    """Return the readings of a lot over its days; None below two."""
    looks = [
        (entry.draft.happened.at, entry.facts.ntu_milli)
        for entry in dossier.state.entries
        if isinstance(entry.facts, Look) and entry.facts.ntu_milli
    ]
    first = opener(dossier.state)
    if len(looks) < 2 or first is None:
        return None
    start = finished_at(dossier.state) or first.draft.happened.at
    days = [max((at - start) / timedelta(days=1), 0.0) for at, _ in looks]
    return _strip(days, [ntu for _, ntu in looks], dossier)


def _strip(days: Sequence[float], readings: Sequence[int], dossier: Dossier) -> ClarityStrip:
    low, high = _ends(readings)
    longest = max(days) or 1.0
    wanted = dossier.formula.wanted_clarity if dossier.formula else None
    is_shaded = wanted in CLEAR
    return ClarityStrip(
        points=tuple(
            ClarityPoint(day / longest, _up(ntu, low, high), scaled(ntu, 1000))
            for day, ntu in zip(days, readings, strict=True)
        ),
        days=tuple(_days(longest)),
        scale=tuple(
            (_up(decade, low, high), scaled(decade, 1000))
            for decade in DECADES
            if low <= decade <= high
        ),
        wanted_to=_up(CLEAR_MILLI, low, high) if is_shaded else None,
        words=f"Shaded: wanted {wanted}, at most {CLEAR_MILLI // 1000} NTU (Ph. Eur. 2.2.1)"
        if is_shaded
        else "",
    )


def _ends(readings: Sequence[int]) -> tuple[int, int]:
    low = max((decade for decade in DECADES if decade <= min(readings)), default=DECADES[0])
    high = min((decade for decade in DECADES if decade >= max(readings)), default=DECADES[-1])
    # A scale of one decade at least, with what is clear on it.
    return min(low, DECADES[1]), max(high, DECADES[2])


def _up(ntu_milli: int, low: int, high: int) -> float:
    up = (log10(ntu_milli) - log10(low)) / (log10(high) - log10(low))
    return min(max(up, 0.0), 1.0)


def _days(longest: float) -> Iterator[tuple[float, str]]:
    yield 0.0, "finished"
    for day in dict.fromkeys(round(longest * part) for part in (0.25, 0.5, 0.75, 1.0)):
        if 0 < day <= longest:
            yield day / longest, f"{day} d"
