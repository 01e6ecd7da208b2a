"""Limits: on its first and its last day one is in force, and a figure decides unrounded."""

from datetime import date

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound
from ledger.domain.masters.limits import (
    Holds,
    ListedLimit,
    counting_on,
    holds_on,
    in_force_on,
    is_above,
    is_below,
    is_passed,
    listed_on,
)
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


BOUNDS = [
    ("at-most", False, False, True),
    ("less-than", False, True, True),
    ("from", False, True, True),
    ("above", False, False, True),
]


@pytest.mark.parametrize(("bound", "below", "at", "above"), BOUNDS)
@pytest.mark.parametrize("off", [1e-3, 1e-6])
def test_each_bound_has_its_own_edge(
    bound: str, below: bool, at: bool, above: bool, off: float
) -> None:
    there = make(Limit, bound=Bound(bound), value_micro=500_000)
    told = [is_passed(figure, there) for figure in (0.5 - off, 0.5, 0.5 + off)]
    assert told == [below, at, above]


@pytest.mark.parametrize(("bound", "at"), [(row[0], row[2]) for row in BOUNDS])
def test_the_rounding_of_a_sum_is_neither_above_nor_below(bound: str, at: bool) -> None:
    """0.1 + 0.2 is 0.30000000000000004 and 0.7 - 0.4 is 0.29999999999999993 to a machine."""
    there = make(Limit, bound=Bound(bound), value_micro=300_000)
    assert [is_passed(figure, there) for figure in (0.1 + 0.2, 0.7 - 0.4)] == [at, at]


def test_nothing_at_all_is_passed_by_whatever_there_is() -> None:
    assert is_above(1e-12, 0)
    assert not is_above(0, 0)
    assert not is_below(0, 0)
