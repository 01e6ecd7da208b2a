"""Ahead: the step of a formula that comes next in the making of a lot.

Guarantees: what stands in the way of a release by the formula's steps is told here before it does.
Refuses: to tell of steps of which no entry need be in the book (an addition, a check, a note), and
of looks at a sample of some age, for which there is a day.
"""

from collections.abc import Iterator

from ledger.domain.entries import Formula
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.state import LotState, is_finished, passes
from ledger.domain.masters.formulas import before_packing
from ledger.domain.rules.release.done import missing_steps
from ledger.domain.rules.release.looks import looks_asked


def step_ahead(formula: Formula, lot: LotState) -> FormulaStep | None:
    """Return the first step up to the filling that is not in the book of a lot, or None."""
    return next(_ahead(formula, lot), None)


def _ahead(formula: Formula, lot: LotState) -> Iterator[FormulaStep]:
    missing = {missed.number for missed in missing_steps(formula, lot)}
    looks = iter(looks_asked(formula, lot, in_order=True))
    passes_left = passes(lot)
    for number, step in before_packing(formula):
        match step.verb:
            case "filter":
                passes_left -= step.passes_min or 1
                is_done = passes_left >= 0
            case "look":
                is_done = next(looks).has_own or step.age_minutes is not None
            case "finish":
                is_done = is_finished(lot)
            case _:
                is_done = number not in missing
        if not is_done:
            yield step
