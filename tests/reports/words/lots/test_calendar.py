"""What is due is read by another program's reader of calendars as it was meant."""

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar
from msgspec.structs import replace

from ledger.service.lots.due import Due, DueList, Waits
from reports.words.lots import calendar as module
from reports.words.lots.calendar import calendar, escaped, folded, summary
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said

NOW = datetime(2026, 7, 1, 9, 30, tzinfo=ZoneInfo("Europe/Dublin"))
AT = datetime(2026, 7, 2, 22, 59, tzinfo=UTC)
REST = Due(Waits.REST, "OE-1", "Orange; essence", "macerate", AT, NOW.astimezone(UTC))
DUE = DueList(
    NOW,
    (
        REST,
        Due(Waits.LOOK, "OE-2", "Essence", "1440", AT),
        Due(Waits.DATE, "BS-1", "Syrup, 250 mL", "2026-07-02", AT),
        Due(Waits.ANSWER, "BS-2", "Zitronensirup, großes Glas " * 3, "ring, from A", AT, None, 7),
        Due(Waits.HOLD, "BS-3", "Held", "cloudy", None),
    ),
)


def events(text: str) -> list[dict[str, object]]:
    # The oracle: icalendar, which follows RFC 5545.
    return [
        {
            "summary": str(event["SUMMARY"]),
            "start": event.decoded("DTSTART"),
            "uid": str(event["UID"]),
        }
        for event in Calendar.from_ical(text).walk("VEVENT")
    ]


def test_moments_days_and_words_come_out_of_another_reader_as_they_went_in() -> None:
    written = calendar(DUE, "Quayside Essences")
    check_golden("calendar.txt", written.replace("\r\n", "\n"))
    told = events(written)
    assert [event["summary"] for event in told] == [
        "OE-1, Orange; essence: the rest to macerate is over",
        "OE-2, Essence: look at the sample, 1 d old",
        "BS-1, Syrup, 250 mL: best before today",
        f"BS-2, {'Zitronensirup, großes Glas ' * 3}: answer complaint 7: ring, from A",
    ]
    # 22:59 UTC is the last minute of the day in Dublin in summer.
    assert [event["start"] for event in told] == [AT, AT, date(2026, 7, 2), date(2026, 7, 2)]


def test_the_same_thing_keeps_its_identifier_and_another_has_another() -> None:
    first = events(calendar(DUE, "Quayside Essences"))
    later = replace(DUE, now=datetime(2026, 7, 5, 9, tzinfo=UTC))
    assert [event["uid"] for event in events(calendar(later, "Quayside Essences"))] == [
        event["uid"] for event in first
    ]
    assert len({event["uid"] for event in first}) == 4
    others = events(calendar(DUE, "Another House"))
    assert not {event["uid"] for event in first} & {event["uid"] for event in others}


@given(st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), max_size=200))
def test_lines_are_folded_at_75_octets_and_unfolded_as_they_were(line: str) -> None:
    pieces = list(folded(line))
    assert all(len(piece.encode()) <= 75 for piece in pieces)
    assert pieces[0] + "".join(piece[1:] for piece in pieces[1:]) == line


@pytest.mark.parametrize(
    ("waits", "words"),
    [
        (Waits.REST, "the rest to 60 is over"),
        (Waits.LOOK, "look at the sample, 1 h old"),
        (Waits.DATE, "best before today"),
        (Waits.ANSWER, "answer complaint 7: 60"),
        (Waits.HOLD, "on hold: 60"),
    ],
)
def test_every_thing_that_waits_has_its_words(waits: Waits, words: str) -> None:
    assert summary(replace(REST, waits=waits, about="60", number=7)) == words


def test_signs_that_mean_something_in_a_calendar_are_escaped() -> None:
    """RFC 5545, section 3.3.11."""
    assert escaped("a\\b, c; d\ne") == "a\\\\b\\, c\\; d\\ne"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
