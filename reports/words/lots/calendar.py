"""What is due, as a calendar that other programs read (iCalendar).

Guarantees: the same thing that is due has the same identifier however often it is written, so that
a calendar takes it anew instead of twice; a day is a day, a moment is in UTC; lines are folded at
75 octets. Refuses: what has no time.

References:
    RFC 5545 (2009), sections 3.1 (lines and folding), 3.3.11 (text), 3.6.1 (VEVENT); RFC 7986
    (2016), section 5.3 (identifiers are UUIDs).
"""

from collections.abc import Iterator
from datetime import UTC, timedelta
from uuid import NAMESPACE_OID, uuid5

from ledger.service.lots.due import Due, DueList, Waits
from reports.kit.format import duration
from reports.words.lots.due import DAYS

MOST_OCTETS = 75
"""The longest line, without its end."""


def calendar(found: DueList, house: str) -> str:
    """Return a calendar of what is due at a time."""
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Pottle//due//EN",
        "CALSCALE:GREGORIAN",
        *(line for item in dated(found) for line in _event(item, found, house)),
        "END:VCALENDAR",
    ]
    return "".join(f"{piece}\r\n" for line in lines for piece in folded(line))


def dated(found: DueList) -> tuple[Due, ...]:
    """Return what is due at a time; a lot on hold waits for none."""
    return tuple(item for item in found.items if item.at)


def _event(item: Due, found: DueList, house: str) -> Iterator[str]:
    assert item.at
    own = item.number or (item.since if item.waits is Waits.REST else item.about)
    stamp = f"{found.now.astimezone(UTC):%Y%m%dT%H%M%SZ}"
    yield "BEGIN:VEVENT"
    yield f"UID:{uuid5(NAMESPACE_OID, f'{house} {item.waits} {item.lot} {own}')}"
    yield f"DTSTAMP:{stamp}"
    if item.waits in DAYS:
        day = item.at.astimezone(found.now.tzinfo).date()
        yield f"DTSTART;VALUE=DATE:{day:%Y%m%d}"
        yield f"DTEND;VALUE=DATE:{day + timedelta(days=1):%Y%m%d}"
    else:
        yield f"DTSTART:{item.at.astimezone(UTC):%Y%m%dT%H%M%SZ}"
    yield f"SUMMARY:{escaped(f'{item.lot}, {item.name}: {summary(item)}')}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def summary(item: Due) -> str:
    """Return what is due, as a calendar says it on the day itself."""
    match item.waits:
        case Waits.REST:
            return f"the rest to {item.about} is over"
        case Waits.LOOK:
            return f"look at the sample, {duration(int(item.about))} old"
        case Waits.DATE:
            return "best before today"
        case Waits.ANSWER:
            return f"answer complaint {item.number}: {item.about}"
        case Waits.HOLD:
            return f"on hold: {item.about}"


def escaped(text: str) -> str:
    r"""Return a text as it stands in a calendar (section 3.3.11).

    >>> print(escaped("syrup, 250 mL; cloudy"))
    syrup\, 250 mL\; cloudy
    """
    for sign in ("\\", ";", ","):
        text = text.replace(sign, f"\\{sign}")
    return text.replace("\n", "\\n")


def folded(line: str) -> Iterator[str]:
    """Yield the pieces of a line, none longer than 75 octets and no letter cut (section 3.1)."""
    piece = ""
    for letter in line:
        if len((piece + letter).encode()) > MOST_OCTETS:
            yield piece
            piece = " "
        piece += letter
    yield piece
