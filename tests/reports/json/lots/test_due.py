"""What is due, for machines."""

from datetime import UTC, datetime

from ledger.service.lots.due import Due, DueList, Waits, due
from reports.json.lots.due import DueRow, due_rows
from tests.keeper import Keeper
from tests.kept.filled import filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_rest_without_a_time_has_none_and_says_what_to_do(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("rest", lot=lots.syrup, purpose="settle")
    keeper.clock.forward(hours=3)
    assert [row for row in due_rows(due(keeper.book)) if row.waits is Waits.REST] == [
        DueRow(
            waits=Waits.REST,
            code="OS-002-M",
            name="Orange syrup",
            says="rest to settle, 3 h so far",
            due=None,
            minutes=None,
            next="pottle rest OS-002-M --end",
        )
    ]


def test_what_is_due_has_its_time_its_minutes_and_its_command() -> None:
    now, at = (datetime(2026, 3, 2, hour, tzinfo=UTC) for hour in (12, 10))
    found = DueList(
        now,
        (
            Due(Waits.DATE, "OS-002-M", "Orange syrup", "2026-03-02", at),
            Due(Waits.ANSWER, "OE-001-5", "Orange essence", "cloudy", None, number=17),
        ),
    )
    assert due_rows(found) == [
        DueRow(
            waits=Waits.DATE,
            code="OS-002-M",
            name="Orange syrup",
            says="past its date: reject it",
            due="2026-03-02T10:00:00+00:00",
            minutes=-120,
            next='pottle reject OS-002-M --because "past its date"',
        ),
        DueRow(
            waits=Waits.ANSWER,
            code="OE-001-5",
            name="Orange essence",
            says="answer complaint 17: cloudy",
            due=None,
            minutes=None,
            next="pottle answer 17 OUTCOME --told today",
        ),
    ]


def test_every_part_of_what_is_due_stands_under_its_own_key() -> None:
    check("due_filled", *due_rows(filled(DueList, about="60")))
