"""Limits in time: on its first and its last day a limit is in force."""

from dataclasses import replace
from datetime import date

import pytest

from ledger.domain.entries import Limit
from ledger.domain.limits import Holds, ListedLimit, counting_on, holds_on, in_force_on, listed_on
from tests.domain.builders import make

ALWAYS = make(Limit, since=None, until=None)
MARCH = make(Limit, since=date(2026, 3, 1), until=date(2026, 3, 31))
APRIL = make(Limit, since=date(2026, 4, 1), until=None)


@pytest.mark.parametrize(
    ("on", "holds"),
    [
        (date(2026, 2, 28), Holds.TO_COME),
        (date(2026, 3, 1), Holds.NOW),
        (date(2026, 3, 31), Holds.NOW),
        (date(2026, 4, 1), Holds.PAST),
    ],
)
def test_a_limit_holds_from_its_first_day_to_its_last(on: date, holds: Holds) -> None:
    assert holds_on(MARCH, on) is holds
    assert holds_on(ALWAYS, on) is Holds.NOW


@pytest.mark.parametrize(
    ("on", "counts", "in_force"),
    [
        (date(2026, 2, 28), ALWAYS, (ALWAYS,)),
        (date(2026, 3, 31), MARCH, (MARCH,)),
        (date(2026, 4, 1), APRIL, (APRIL,)),
    ],
)
def test_the_latest_version_that_has_begun_counts(
    on: date, counts: Limit, in_force: tuple[Limit, ...]
) -> None:
    said = (ALWAYS, MARCH, APRIL)
    assert counting_on(said, on) == counts
    assert in_force_on([said], on) == in_force


def test_a_limit_that_its_maker_ended_does_not_give_way_to_an_older_version() -> None:
    assert in_force_on([(ALWAYS, MARCH)], date(2026, 4, 1)) == ()
    assert in_force_on([(APRIL,)], date(2026, 3, 1)) == ()


def test_what_is_to_come_is_listed_beside_what_counts() -> None:
    on = date(2026, 3, 2)
    assert listed_on((ALWAYS, APRIL), on) == ListedLimit(ALWAYS, Holds.NOW, APRIL)
    assert listed_on((APRIL,), on) == ListedLimit(APRIL, Holds.TO_COME)
    ended = replace(ALWAYS, until=date(2026, 3, 1))
    assert listed_on((ALWAYS, ended), on) == ListedLimit(ended, Holds.PAST)
