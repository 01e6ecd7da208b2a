"""What a step of the formula limits and nobody gave stands in the way of a release."""

from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Add, Facts, Filter, Finish, Formula, MakeUp, Measurement, Rest
from ledger.domain.entries.choices import RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.rules import Finding
from ledger.domain.rules.release import given
from tests.domain.builders import at, lot, make, packed
from tests.domain.rules.cases import Case, find
from tests.domain.rules.release.leaving import released, stop

COLD = FormulaStep("rest", rest_for=RestFor.CHILL, temp_max_mdegc=4000)
FINE = FormulaStep("filter", pore_max_nm=5000, minutes_max=60)
COARSE = FormulaStep("filter", pore_max_nm=25_000)
CHILLED = make(Rest, purpose=RestFor.CHILL, ended_at=at(10))


def held_to(*facts: Facts, steps: tuple[FormulaStep, ...] = (COLD, FINE)) -> tuple[Any, Any]:
    return released(lot("E-1", *facts), formula=make(Formula, steps=steps))


def lacks(what: str, asked: str, field: str) -> list[Finding]:
    return stop(
        f"Entry 2, {what}; orange version 1 asks for {asked}.",
        "Say it, if it was read",
        f'pottle correct 2 --set {field} --because "WHERE IT STOOD"',
    )


NO_WARMTH = "has no temperature"
CASES = [
    Case("a chill with its temperature", *held_to(replace(CHILLED, temp_mdegc=3000))),
    Case("a chill without", *held_to(CHILLED),
         lacks("a rest, has no temperature", "at most 4 °C", "temp=DEGREES")),
    Case("one that goes on", *held_to(make(Rest, purpose=RestFor.CHILL))),
    Case("a rest of another purpose", *held_to(make(Rest, ended_at=at(10)))),
    Case("a pass with its pores and its time", *held_to(
        make(Filter, pore_low_nm=4000, minutes=20))),
    Case("a pass without either", *held_to(make(Filter)),
         lacks("a pass, has no pore size", "at most 5 µm", "pore-high=SIZE")
         + lacks("a pass, has no time", "at most 1 h", "minutes=MINUTES")),
    *(
        Case(f"{facts.KIND} without its warmth",
             *held_to(facts, steps=(FormulaStep(facts.KIND, temp_max_mdegc=25_000),)),
             lacks(f"{named}, {NO_WARMTH}", "at most 25 °C", "temp=DEGREES"))
        for facts, named in (
            (make(Add), "an addition"), (make(MakeUp), "a making up"),
            (make(Finish), "a finish"), (make(Measurement), "a reading"),
        )
    ),
    Case("the step that lacks the least counts", *held_to(
        make(Filter, pore_high_nm=20_000), steps=(FINE, COARSE))),
    Case("bottles of it", *released(packed("P-1", bulk=lot("E-1", CHILLED)),
         formula=make(Formula, steps=(COLD,))),
         lacks("a rest, has no temperature", "at most 4 °C", "temp=DEGREES")),
    Case("no formula", *released(lot("E-1", CHILLED), formula=None)),
]  # fmt: skip


@pytest.mark.parametrize("case", CASES, ids=str)
def test_what_a_step_limits_was_said(case: Case) -> None:
    assert find(given.RULES, case) == list(case.found)
