"""Following: an act is compared with the step of the formula that its batch follows.

Guarantees: what is outside the step's limits is recorded with a reason only, compared to the second
and told to the minute; where several steps fit an act, the one it keeps best counts.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta

from ledger.domain.amounts.quantity import show
from ledger.domain.entries import (
    Add,
    Draft,
    Facts,
    Filter,
    Finish,
    Formula,
    Look,
    MakeUp,
    Measurement,
    Rest,
)
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.formulas import steps_for, version_of
from ledger.domain.rules.figures import degrees, is_outside, microns, span, time_of, time_outside
from ledger.domain.rules.finding import SAY_WHY, Finding, Rule, Severity, needs_reason, remark


def step_is_kept(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was done at a step was within the step's limits."""
    formula, facts = scene.control.formula, draft.facts
    if formula is None or scene.lot is None:
        return
    kept = [_outside(step, facts, formula) for step in steps_for(formula, facts)]
    yield from min(kept, key=_weight, default=[])


def _weight(findings: list[Finding]) -> tuple[int, int]:
    reasons = sum(finding.severity is Severity.REASON for finding in findings)
    return reasons, len(findings)


def _outside(step: FormulaStep, facts: Facts, formula: Formula) -> list[Finding]:
    which = version_of(formula)
    match facts:
        case Rest(purpose=purpose, started_at=started, ended_at=datetime() as ended):
            told = f"The rest to {purpose}"
            return [
                *_time(step, told, ended - started, which),
                *_warmth(step, told, facts.temp_mdegc, which),
            ]
        case Filter() as passed:
            return list(_of_pass(step, f"Pass {passed.pass_no}", passed, which))
        case Add(minutes=minutes):
            timed = _minutes(step, "The adding", minutes, which)
            return [*timed, *_warmth(step, "The adding", facts.temp_mdegc, which)]
        case MakeUp() | Finish() | Measurement():
            return list(_warmth(step, f"The step {facts.KIND}", facts.temp_mdegc, which))
        case Look():
            return [
                remark("look", finding.what, "Look again as the formula asks; this look is kept.")
                for finding in _warmth(step, "The look", facts.temp_mdegc, which)
            ]
        case _:
            return []


def _of_pass(step: FormulaStep, told: str, passed: Filter, which: str) -> Iterator[Finding]:
    yield from _pores(step, told, passed, which)
    yield from _precoat(step, told, passed, which)
    yield from _minutes(step, told, passed.minutes, which)
    yield from _warmth(step, told, passed.temp_mdegc, which)


def _minutes(step: FormulaStep, told: str, minutes: int | None, which: str) -> Iterator[Finding]:
    if minutes:
        yield from _time(step, told, timedelta(minutes=minutes), which)


def _time(step: FormulaStep, told: str, lasted: timedelta, which: str) -> Iterator[Finding]:
    low, high = step.minutes_min, step.minutes_max
    if is_outside(lasted, low, high):
        took, asked = time_outside(lasted, low, high), span(low, high, time_of)
        yield needs_reason("time", f"{told} took {took}; {which} asks for {asked}.", SAY_WHY)


def _warmth(step: FormulaStep, told: str, temp: int | None, which: str) -> Iterator[Finding]:
    low, high = step.temp_min_mdegc, step.temp_max_mdegc
    if low is None and high is None:
        return
    asked = span(low, high, degrees)
    if temp is None:
        yield remark("temperature", f"{told} has no temperature; {which} asks for {asked}.")
    elif (low is not None and temp < low) or (high is not None and temp > high):
        yield needs_reason(
            "temperature", f"{told} was at {degrees(temp)}; {which} asks for {asked}.", SAY_WHY
        )


def _pores(step: FormulaStep, told: str, passed: Filter, which: str) -> Iterator[Finding]:
    coarsest = passed.pore_high_nm or passed.pore_low_nm
    if step.pore_max_nm is None:
        return
    asked = f"at most {microns(step.pore_max_nm)}"
    if coarsest is None:
        yield remark("pores", f"{told} has no pore size; {which} asks for {asked}.")
    elif coarsest > step.pore_max_nm:
        what = f"{told} ran through {microns(coarsest)}; {which} asks for {asked}."
        yield needs_reason("pores", what, SAY_WHY)


def _precoat(step: FormulaStep, told: str, passed: Filter, which: str) -> Iterator[Finding]:
    least, laid = step.precoat_min, passed.precoat
    # A precoat is laid once, before the first pass.
    if least is None or passed.pass_no != 1 or (laid and laid.amount >= least.amount):
        return
    there = f"a precoat of {show(laid.amount, laid.measure)}" if laid else "no precoat"
    yield needs_reason(
        "precoat",
        f"{told} had {there}; {which} asks for at least {show(least.amount, least.measure)}.",
        SAY_WHY,
    )


RULES: tuple[Rule, ...] = (step_is_kept,)
