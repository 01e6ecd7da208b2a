"""A clock that is behind the last entry, or years after it, asks for a reason."""

from datetime import timedelta

import pytest

from ledger.domain.entries import Note
from ledger.domain.rules.always import clocks
from tests.domain.builders import NOW, draft, make, scene
from tests.domain.rules.cases import WHY, Case, find, said

NOTE = make(Note)
HERE = f"The clock here says {NOW:%Y-%m-%d %H:%M} UTC"
WHAT_TO_DO = "Set the clock of this machine right; if it is right, say so with --because."
BEHIND = NOW + clocks.CLOCK_ERROR + timedelta(minutes=1)
LONG_AGO = NOW - clocks.LONG_AWAY - timedelta(minutes=1)

CASES = [
    Case("a new book", draft(NOTE), scene(last_recorded=None)),
    Case("clocks that differ a little", draft(NOTE), scene(last_recorded=NOW + clocks.CLOCK_ERROR)),
    Case("two years away", draft(NOTE), scene(last_recorded=NOW - clocks.LONG_AWAY)),
    Case("a year away", draft(NOTE), scene(last_recorded=NOW - timedelta(days=365))),
    Case(
        "a clock that is behind",
        draft(NOTE),
        scene(last_recorded=BEHIND),
        said(
            WHY,
            "clock",
            f"{HERE}, before the last entry, recorded {BEHIND:%Y-%m-%d %H:%M} UTC.",
            WHAT_TO_DO,
        ),
    ),
    Case(
        "a clock that leapt",
        draft(NOTE),
        scene(last_recorded=LONG_AGO),
        said(
            WHY,
            "clock",
            f"{HERE}, years after the last entry, of {LONG_AGO:%Y-%m-%d %H:%M} UTC.",
            WHAT_TO_DO,
        ),
    ),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_clock_goes_on_from_the_last_entry(case: Case) -> None:
    assert find(clocks.RULES, case) == list(case.found)
