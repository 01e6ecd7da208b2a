"""Which command comes next in a batch that is made by a formula.

Guarantees: the steps of the formula in their order, each until it is in the book; what it limits is
asked for. Refuses: to choose what the formula leaves open; it stands in capitals.
"""

from ledger.domain.entries import Entry, Formula
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.state import LotState, passes
from ledger.domain.masters.formulas import steps_for
from ledger.domain.rules.formula.ahead import step_ahead
from ledger.domain.rules.release.clarity import look_of, warmth_of
from ledger.domain.rules.release.done import record_of


def by_formula(formula: Formula, state: LotState) -> str | None:
    """Return the command for the next step of a formula; None when all are in the book."""
    step = step_ahead(formula, state)
    if step is None:
        return None
    match step.verb:
        case "rest":
            return f"pottle rest {state.code} --for {step.rest_for or 'PURPOSE'}"
        case "look":
            return look_of(step, state.code)
        case "finish":
            return f"pottle finish {state.code} VOLUME{warmth_of(step)}"
        case "filter":
            return f"{record_of(step, state.code)}{_precoat(step, state)}{warmth_of(step)}"
        case "measure" | "makeup":
            return f"{record_of(step, state.code)}{warmth_of(step)}"
        case _:
            return record_of(step, state.code)


def end_of_rest(going_on: Entry, formula: Formula, code: str) -> str:
    """Return the command that ends a rest, with the temperature where the formula limits it."""
    warmth = next((warmth_of(step) for step in steps_for(formula, going_on.facts)), "")
    return f"pottle rest {code} --end{warmth}"


def _precoat(step: FormulaStep, state: LotState) -> str:
    return " --precoat AMOUNT" if step.precoat_min and not passes(state) else ""
