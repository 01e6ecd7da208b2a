"""The spirit account of a book that was really kept balances."""

from datetime import date

import pytest

from ledger.errors import InputError
from ledger.service.glass.spirit import _around, _period, spirit_account
from tests.keeper import Keeper
from tests.path import walk_main_path
from tests.service.engines import ON_EACH_ENGINE
from tests.service.glass.vanilla import problems, with_vanilla


def test_the_spirit_account_balances_and_tells_what_was_used(keeper: Keeper) -> None:
    walk_main_path(keeper)
    found = spirit_account(keeper.book, "2026-01-01", "2026-12-31").account
    assert found.received == pytest.approx(4.8)
    assert found.used == pytest.approx(0.44 * 0.96)
    assert found.difference == pytest.approx(0, abs=1e-9)
    assert found.sent["sale"] == pytest.approx(0.006854 * 1.5, abs=1e-5)


@ON_EACH_ENGINE
def test_the_spirit_account_counts_an_extract_and_balances(keeper: Keeper) -> None:
    with_vanilla(keeper)
    found = spirit_account(keeper.book, "2026-01-01", "2026-12-31").account
    assert found.received == pytest.approx(0.175)
    assert found.used == pytest.approx(0.035)
    assert found.in_spirit == pytest.approx(0.14)
    assert found.in_making == pytest.approx(0.035)
    assert found.lost == pytest.approx(0, abs=1e-9)
    assert found.difference == pytest.approx(0, abs=1e-9)


def test_a_period_that_ends_before_it_begins_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        spirit_account(sqlite_keeper.book, "2026-03-01", "2026-02-01")
    assert problems(raised.value) == (
        (
            "The period would end on 2026-02-01, before it begins on 2026-03-01.",
            "Give --from the earlier day.",
        ),
    )


def test_a_period_is_from_the_first_of_its_year_to_today_unless_it_is_said() -> None:
    today = date(2026, 3, 9)
    told = [
        _period(first, last, today)
        for first, last in ((None, None), ("2025-12-31", None), (None, "2025-06-30"))
    ]
    assert told == [
        (date(2026, 1, 1), today),
        (date(2025, 12, 31), today),
        (date(2025, 1, 1), date(2025, 6, 30)),
    ]
    assert _period("2026-03-09", "2026-03-09", date(2020, 1, 1)) == (today, today)
    with pytest.raises(InputError) as raised:
        _period("soon", "later", today)
    assert [what for what, _ in raised.value.problems] == [
        '"later" is not a date.',
        '"soon" is not a date.',
    ]
    assert _around(today, today) == ("2026-03-08T00:00:00Z", "2026-03-11T00:00:00Z")
