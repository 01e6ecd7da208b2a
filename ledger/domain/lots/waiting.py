"""When a lot is due for something: its rest over, its sample to be looked at.

Guarantees: pure; a moment follows from what was recorded and the formula alone. Refuses: to guess
how long a rest without a formula lasts.
"""

from datetime import datetime, timedelta

from ledger.domain.entries import Formula, Look, Rest, entries_of
from ledger.domain.lots.state import LotState, open_rest
from ledger.domain.masters.formulas import steps_for

RETAINED_DAYS = (1, 7, 30, 90)
"""Ages in days at which a retained sample is looked at (common practice, no source)."""
EARLY = 10
"""A look counts for an age when no more than one part in so many is missing (no source)."""


def rest_is_over(state: LotState, formula: Formula | None) -> tuple[Rest, datetime | None] | None:
    """Return the rest that goes on and when it may end by its formula; None when none goes on."""
    going_on = open_rest(state)
    if going_on is None:
        return None
    facts = going_on.facts
    steps = steps_for(formula, facts) if formula else ()
    least = next((step.minutes_min for step in steps if step.minutes_min is not None), None)
    return facts, None if least is None else facts.started_at + timedelta(minutes=least)


def next_look(
    state: LotState, since: datetime, ages: tuple[timedelta, ...], now: datetime
) -> tuple[timedelta, datetime] | None:
    """Return the age at which a lot is to be looked at next, and when that is.

    A later look stands for the earlier ones that were missed: of several ages that have passed
    unlooked at, the last one is due.
    """
    looks = [entry.draft.happened.at for entry in entries_of(state.entries, Look)]
    last = max(looks, default=since)
    wanted = [age for age in sorted(ages) if last < since + age - age / EARLY]
    passed = [age for age in wanted if since + age <= now]
    return next(((age, since + age) for age in (*passed[-1:], *wanted)), None)


def ages_of(formula: Formula | None) -> tuple[timedelta, ...]:
    """Return the ages at which a formula asks for a look."""
    steps = formula.steps if formula else ()
    return tuple(
        timedelta(minutes=step.age_minutes)
        for step in steps
        if step.verb == "look" and step.age_minutes
    )
