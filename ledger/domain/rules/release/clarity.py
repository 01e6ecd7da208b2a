"""The gate of a lot that follows a formula: its looks and its clarity.

Guarantees: every look that the formula asks for is asked for, all at once, besides what is asked of
every lot.
"""

from collections.abc import Iterator
from datetime import datetime

from ledger.domain.entries import Draft, Formula
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, finished_at, last_look
from ledger.domain.masters.formulas import version_of, worst_wanted
from ledger.domain.rules.figures import degrees, is_outside, span, time_of
from ledger.domain.rules.finding import Finding, Rule
from ledger.domain.rules.release.barriers import FLAWS, stands_in_the_way, to_release
from ledger.domain.rules.release.looks import Asked, looks_asked

GRADES = tuple(Grade)
"""The grades, best to worst."""
REWORK_OR_HOLD = "Rework it, or hold it"
"""What to do with a lot that does not look as it should."""


def looks_are_done(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Each look that the formula asks for before filling was taken, as asked, and was good."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    for asked in looks_asked(formula, lot):
        yield from _look_is_good(asked, lot, formula, draft.happened.at)


def _look_is_good(
    asked: Asked, lot: LotState, formula: Formula, now: datetime
) -> Iterator[Finding]:
    step = asked.step
    if not asked.has_own:
        again = " once more" if asked.seen else ""
        since = " since it last changed" if asked.is_last else ""
        each = ": one look answers one step" if asked.seen else ""
        yield stands_in_the_way(
            f"{lot.code} has not been looked at {_asked(step)}{again}{since}, as "
            f"{version_of(formula)} asks{each}.",
            *_how_to_look(step, lot, now),
        )
        return
    look = asked.seen[-1].facts
    if step.worst and GRADES.index(look.grade) > GRADES.index(step.worst):
        yield stands_in_the_way(
            f"Looked at {_asked(step)}, {lot.code} was {look.grade}; {version_of(formula)} asks "
            f"for {step.worst} or better.",
            "Clear it and look again, or hold it",
            f'pottle hold {lot.code} --because "WHY"',
        )


def _how_to_look(step: FormulaStep, lot: LotState, now: datetime) -> tuple[str, str]:
    """Return what to do for a look that would count, and the command.

    Too early for it, they are what tells when it would, or what its time is counted from.
    """
    making = lot.bulk or lot
    made = finished_at(making)
    if step.age_minutes and not made:
        how = "Finish it, and look at it when it is old enough"
        return how, f"pottle finish {making.code} VOLUME"
    if made and is_outside(now - made, step.age_minutes, None):
        return "Look at it when it is old enough", "pottle due"
    return "Look at it", look_of(step, lot.code)


def look_of(step: FormulaStep, code: str) -> str:
    """Return the command of a look as a step asks for it."""
    how = f" --dilution {step.dilution}" if step.dilution else ""
    return f"pottle look {code} GRADE --of {step.looked_at or 'neat'}{how}{warmth_of(step)}"


def warmth_of(step: FormulaStep) -> str:
    """Return the option for a temperature, where a step limits it; else nothing."""
    has_limits = (step.temp_min_mdegc, step.temp_max_mdegc) != (None, None)
    return " --temp DEGREES" if has_limits else ""


def _asked(step: FormulaStep) -> str:
    low, high = step.temp_min_mdegc, step.temp_max_mdegc
    warmth = span(low, high, degrees)
    parts = (
        str(step.looked_at or LookedAt.NEAT).replace("-", " "),
        step.dilution or "",
        f"at {warmth.removeprefix('at ')}" if warmth else "",
        f"{time_of(step.age_minutes)} after finishing" if step.age_minutes is not None else "",
    )
    return ", ".join(part for part in parts if part)


def clarity_is_wanted(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The last look found the clarity that the formula wants, and no flaw."""
    lot, formula = to_release(draft, scene), scene.control.formula
    look = last_look(lot) if lot else None
    if lot is None or formula is None or look is None:
        return
    # A glass that has a step of its own was held to that, above.
    is_of_step = worst_wanted(formula, look.looked_at) != formula.wanted_clarity
    meant = None if is_of_step else formula.wanted_clarity
    is_cloud = formula.product_kind is ProductKind.GUM_EMULSION
    if meant is not None:
        off = GRADES.index(look.grade) - GRADES.index(meant)
        # A gum emulsion is meant to be cloudy, so there the clearer grade is the worse.
        if (off < 0) if is_cloud else (off > 0):
            better = "or cloudier" if is_cloud else "or better"
            yield stands_in_the_way(
                f"The last look at {lot.code} found it {look.grade}; {version_of(formula)} wants "
                f"it {meant} {better}.",
                REWORK_OR_HOLD,
                f'pottle hold {lot.code} --because "WHY"',
            )
    if flaws := [flaw for flag, flaw in FLAWS.items() if getattr(look, flag)]:
        yield stands_in_the_way(
            f"The last look at {lot.code} found {' and '.join(flaws)}.",
            REWORK_OR_HOLD,
            f'pottle hold {lot.code} --because "WHY"',
        )


RULES: tuple[Rule, ...] = (looks_are_done, clarity_is_wanted)
