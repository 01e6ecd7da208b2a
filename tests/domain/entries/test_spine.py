"""What an entry tells of itself: its kind, its place, and whether it was written late."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from msgspec.structs import replace

from ledger.domain.entries import FACTS, Judge, Look, entries_of, is_of
from ledger.domain.entries.spine import utc
from tests.domain.builders import NOW, entry, make

LOOK, VERDICT = make(Look), make(Judge)


def test_an_entry_is_of_the_kind_that_its_facts_are() -> None:
    looked, judged = entry(LOOK, 7), entry(VERDICT, 8)
    assert (looked.facts, looked.kind, judged.kind) == (LOOK, "look", "judge")
    assert all(kind == facts.KIND for kind, facts in FACTS.items())
    assert (is_of(looked, Look), is_of(looked, Judge)) == (True, False)
    assert list(entries_of([looked, judged, looked], Look)) == [looked, looked]


@pytest.mark.parametrize(("seconds", "is_late"), [(0, False), (86_400, False), (86_401, True)])
def test_what_was_written_more_than_a_day_after_it_happened_is_late(
    seconds: int, is_late: bool
) -> None:
    looked = entry(LOOK)
    written = replace(looked, recorded_at=looked.recorded_at + timedelta(seconds=seconds))
    assert written.is_late is is_late


def test_entries_stand_by_when_they_happened_and_then_by_their_number() -> None:
    first, second = entry(LOOK, 9), entry(LOOK, 4, NOW + timedelta(seconds=1))
    assert (first.position, second.position) == ((NOW, 9), (NOW + timedelta(seconds=1), 4))
    assert sorted([second, first], key=lambda each: each.position) == [first, second]


def test_a_moment_is_cut_to_whole_seconds_of_utc() -> None:
    moment = datetime(2026, 3, 2, 1, 0, 59, 999_999, tzinfo=timezone(timedelta(hours=2)))
    assert utc(moment) == datetime(2026, 3, 1, 23, 0, 59, tzinfo=UTC)
    assert utc(moment).tzinfo is UTC
