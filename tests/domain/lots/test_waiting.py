"""When a rest is over and when a lot is to be looked at next."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Formula, Look, Rest
from ledger.domain.entries.choices import RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.waiting import ages_of, next_look, rest_is_over
from tests.domain.builders import at, entry, lot, make

FORMULA = replace(
    make(Formula),
    steps=(
        FormulaStep("rest", rest_for=RestFor.MACERATE, minutes_min=24 * 60),
        FormulaStep("look", age_minutes=7 * 24 * 60),
        FormulaStep("look"),
    ),
)
RESTING = lot("E-1", Rest(RestFor.MACERATE, at(9)))
WEEK, DAY = timedelta(days=7), timedelta(days=1)


def test_a_rest_is_over_after_the_least_time_of_its_formula() -> None:
    found = rest_is_over(RESTING, FORMULA)
    assert found is not None
    assert found[1] == at(9, day=3)


def test_a_rest_without_a_formula_has_no_end_and_no_rest_none_at_all() -> None:
    found = rest_is_over(RESTING, None)
    assert found is not None
    assert found[1] is None
    assert rest_is_over(lot(), FORMULA) is None


@pytest.mark.parametrize(
    ("looked_on", "now_on", "age", "due_on"),
    [
        (None, 2, DAY, 2),
        (2, 2, WEEK, 8),
        (None, 9, WEEK, 8),
        (None, 31, timedelta(days=30), 31),
        (7, 9, WEEK, 8),
        (8, 9, timedelta(days=30), 31),
    ],
    ids=["never looked at", "looked at in time", "both missed", "all missed", "too early", "done"],
)
def test_of_the_ages_that_are_left_the_nearest_or_the_last_missed_is_due(
    looked_on: int | None, now_on: int, age: timedelta, due_on: int
) -> None:
    looks = [entry(make(Look), 2, at(12, day=looked_on))] if looked_on else []
    ages = (DAY, WEEK, timedelta(days=30))
    found = next_look(lot("E-1", *looks), at(12, day=1), ages, at(13, day=now_on))
    assert found == (age, at(12, day=due_on))


def test_nothing_is_due_when_all_ages_were_looked_at() -> None:
    looked = lot("E-1", entry(make(Look), 2, at(12, day=20)))
    assert next_look(looked, at(12, day=1), (DAY, WEEK), at(12, day=21)) is None


def test_a_formula_asks_for_looks_at_ages_only_where_it_says_one() -> None:
    assert ages_of(FORMULA) == (WEEK,)
    assert ages_of(None) == ()


def test_an_age_just_reached_is_due_and_a_look_a_tenth_too_early_does_for_it() -> None:
    """Nine days of ten: from there on a look counts for the age, and not a minute before."""
    begun, ten = at(12, day=1), timedelta(days=10)
    ages, state = (DAY, ten), lot("E-1")
    due = at(12, day=11)
    assert next_look(state, begun, ages, due) == (ten, due)
    assert next_look(state, begun, ages, due - timedelta(minutes=1)) == (DAY, at(12, day=2))
    for before, found in ((timedelta(minutes=1), (ten, due)), (timedelta(0), None)):
        looked = lot("E-1", entry(make(Look), 2, at(12, day=10) - before))
        assert next_look(looked, begun, ages, at(13, day=10)) == found
