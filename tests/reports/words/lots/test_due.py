"""What is due, in rows: when, of what, and what to do."""

from datetime import UTC, datetime, timedelta

import pytest

from ledger.service.lots.due import Due, DueList, Waits, due
from reports.words.lots import due as module
from reports.words.lots.due import countdown, folded, minutes_between, past_line, rows
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots

NOW = datetime(2026, 3, 2, 12, tzinfo=UTC)


@pytest.mark.parametrize(
    ("later", "words"),
    [
        (timedelta(hours=3), "in 3 h"),
        (timedelta(days=1, hours=2), "in 1 d 2 h"),
        (timedelta(days=2, hours=2), "in 2 d"),
        (timedelta(seconds=0), "in 0 min"),
        (timedelta(seconds=-31), "1 min ago"),
        (timedelta(hours=-5), "5 h ago"),
        (None, "–"),
    ],
)
def test_how_long_there_is_still_is_told_in_the_largest_units(
    later: timedelta | None, words: str
) -> None:
    assert countdown(None if later is None else NOW + later, NOW) == words


def test_minutes_are_below_zero_for_what_is_past() -> None:
    assert minutes_between(NOW, NOW + timedelta(hours=1)) == 60
    assert minutes_between(NOW, NOW - timedelta(minutes=5)) == -5


def test_a_rest_without_a_time_says_how_long_it_has_been(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    (waiting,) = due(keeper.book).items
    keeper.do("answer", complaint=str(waiting.number), outcome="explained", told_by="AB")
    keeper.do("rest", lot=lots.syrup, purpose="settle")
    keeper.clock.forward(hours=3)
    assert rows(due(keeper.book)) == [
        ("–", "", lots.syrup, "Orange syrup", "rest to settle, 3 h so far")
    ]


def test_looks_and_dates_long_past_are_folded_and_what_waits_is_not() -> None:
    def item(waits: Waits, days: float, code: str) -> Due:
        return Due(waits, code, "Orange essence", "1440", NOW - timedelta(days=days))

    late = (item(Waits.LOOK, 90, "A-1"), item(Waits.DATE, 31, "A-2"), item(Waits.LOOK, 40, "A-3"))
    kept = (
        item(Waits.REST, 60, "A-4"),
        item(Waits.ANSWER, 60, "A-5"),
        item(Waits.DATE, 29, "A-6"),
        item(Waits.LOOK, -2, "A-7"),
        Due(Waits.HOLD, "A-8", "Orange essence", "", None),
    )
    shown, past = folded(DueList(NOW, (*late, *kept)))
    assert (shown.items, past) == (kept, late)
    assert past_line(past) == (
        "Long past, 30 days or more: 2 looks, 1 date; pottle due --all lists them."
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(1439, "23 h 59 min"), (2879, "1 d 23 h 59 min"), (2881, "2 d"), (4319, "2 d"), (4320, "3 d")],
)
def test_from_two_days_on_only_whole_days_are_told(minutes: int, words: str) -> None:
    assert countdown(NOW + timedelta(minutes=minutes), NOW) == f"in {words}"
