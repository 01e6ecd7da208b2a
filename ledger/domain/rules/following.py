"""Following: an entry is compared with the step of the formula that its batch follows.

Guarantees: what is outside the formula's limits is recorded with a reason only; where several
steps fit an entry, the one it keeps best counts. Refuses: nothing else; a batch without a formula
has no limits.
"""

from collections.abc import Iterator
from datetime import datetime

from ledger.domain.entries import (
    Add,
    Draft,
    Entry,
    Facts,
    Filter,
    Finish,
    Formula,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Start,
)
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.entries.words import AddedAs
from ledger.domain.formulas import Wanted, steps_for, together, version_of, wanted
from ledger.domain.lots import LotState, density_mg_per_l, in_measure, latest
from ledger.domain.quantity import Measure, Quantity, show
from ledger.domain.rules.finding import Finding, Rule, Severity, needs_reason, remark
from ledger.domain.rules.in_words import (
    degrees,
    microns,
    per_cent_exactly,
    per_cent_outside,
    span,
    time_of,
)
from ledger.domain.scene import Scene

SAY_WHY = "Check what was written; if it is so, say why with --because."


def formula_is_in_use(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A batch is begun by a version that is neither withdrawn nor of a later day."""
    facts, formula = draft.facts, scene.control.formula
    if not isinstance(facts, Start) or formula is None:
        return
    which = f"Version {formula.version} of the formula {formula.code}"
    if scene.control.is_withdrawn:
        yield needs_reason(
            "withdrawn",
            f"{which} is withdrawn.",
            "Load a newer one: pottle formula load FILE (or say why with --because).",
        )
    day = draft.happened.local().date()
    if formula.valid_from and day < formula.valid_from:
        yield needs_reason(
            "not valid yet",
            f"{which} may be used from {formula.valid_from}; this is {day}.",
            "Begin the batch then, or say why with --because.",
        )


def formula_is_checked(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A formula that nobody else has checked is remarked on."""
    facts = draft.facts
    if not isinstance(facts, Formula) or facts.prepared_by is None:
        return
    if facts.checked_by is None:
        yield remark(
            "unchecked",
            f"{facts.prepared_by} prepared version {facts.version} of {facts.code}: nobody has "
            "checked it.",
        )
    elif facts.checked_by == facts.prepared_by:
        yield remark(
            "unchecked",
            f"{facts.checked_by} prepared and checked version {facts.version} of {facts.code}: "
            "no other person has checked it.",
        )


def materials_are_the_formulas(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What goes in is what the formula calls for, and no more of it than it allows."""
    facts, formula, lot = draft.facts, scene.control.formula, scene.lot
    if not isinstance(facts, Add) or formula is None or lot is None or not formula.lines:
        return
    # a formula that names nothing made here leaves it open what of that goes in
    is_open = scene.control.is_made(facts.source) and not any(
        line.formula for line in formula.lines
    )
    if facts.added_as is not AddedAs.INGREDIENT or is_open:
        return
    called = scene.control.called(facts.source)
    line = next((item for item in _wanted(formula, lot) if item.called == called), None)
    if line is not None:
        yield from _too_much(facts, line, formula, lot, scene)
        return
    listed = ", ".join(dict.fromkeys(item.called.code for item in _wanted(formula, lot)))
    yield needs_reason(
        "formula",
        f"{facts.source} is not in {version_of(formula)}, which calls for {listed}.",
        SAY_WHY,
    )


def _too_much(
    facts: Add, line: Wanted, formula: Formula, lot: LotState, scene: Scene
) -> Iterator[Finding]:
    more = _in_measure(facts.amount, line.measure, scene.source(facts.source))
    total = went_in(line, lot, scene)
    if more is None or total is None or line.most is None:
        return
    if total + more > line.most:
        yield needs_reason(
            "formula",
            f"With this {show(total + more, line.measure)} of {line.called.code} are in "
            f"{lot.code}; {version_of(formula)} calls for {show(line.amount, line.measure)}, "
            f"at most {show(line.most, line.measure)}.",
            SAY_WHY,
        )


def nothing_is_short(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """When the making ends, all of the formula's materials are in."""
    formula, lot = scene.control.formula, scene.lot
    if not isinstance(draft.facts, Finish) or formula is None or lot is None:
        return
    for line in _wanted(formula, lot):
        total = went_in(line, lot, scene)
        least = line.least if line.least is not None else 1
        if total is not None and total < least:
            there = show(total, line.measure) if total else "nothing"
            yield needs_reason(
                "formula",
                f"Of {line.called.code} {there} went into {lot.code}; {version_of(formula)} calls "
                f"for {show(line.amount, line.measure)}"
                + (f", at least {show(least, line.measure)}." if line.least else "."),
                "Record the addition that is missing: pottle add ... (or say why with --because).",
            )


def went_in(line: Wanted, lot: LotState, scene: Scene) -> int | None:
    """Return how much of a line was added, in its measure; None when not comparable."""
    total = 0
    for entry in lot.entries:
        facts = entry.draft.facts
        if not isinstance(facts, Add) or facts.added_as is not AddedAs.INGREDIENT:
            continue
        if scene.control.called(facts.source) != line.called:
            continue
        amount = _taken(entry, facts, line.measure, scene)
        if amount is None:
            return None
        total += amount
    return total


def _taken(entry: Entry, facts: Add, measure: Measure, scene: Scene) -> int | None:
    if facts.amount.measure is measure:
        return facts.amount.amount
    inputs = {item.code: item.measure for item in scene.control.inputs}
    if inputs.get(facts.source) is measure and entry.postings:
        return entry.postings[0].taken
    return _in_measure(facts.amount, measure, scene.source(facts.source))


def _in_measure(amount: Quantity, measure: Measure, source: LotState | None) -> int | None:
    return in_measure(amount, measure, density_mg_per_l(source) if source else None)


def _wanted(formula: Formula, lot: LotState) -> tuple[Wanted, ...]:
    start = latest(lot, Start)
    return together(wanted(formula, start.target.amount)) if start else ()


def step_is_kept(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was done at a step was within the step's limits."""
    formula, facts = scene.control.formula, draft.facts
    if formula is None or scene.lot is None:
        return
    kept = [_outside(step, facts, formula) for step in steps_for(formula, facts)]
    yield from min(kept, key=_weight, default=[])


def _weight(found: list[Finding]) -> tuple[int, int]:
    reasons = sum(finding.severity is Severity.REASON for finding in found)
    return reasons, len(found)


def _outside(step: FormulaStep, facts: Facts, formula: Formula) -> list[Finding]:
    which = version_of(formula)
    match facts:
        case Rest(purpose=purpose, started_at=started, ended_at=datetime() as ended):
            lasted = round((ended - started).total_seconds() / 60)
            told = f"The rest to {purpose}"
            return [*_time(step, told, lasted, which), *_warmth(step, told, facts, which)]
        case Filter() as passed:
            told = f"Pass {passed.pass_no}"
            return [
                *_pores(step, told, passed, which),
                *_precoat(step, told, passed, which),
                *(_time(step, told, passed.minutes, which) if passed.minutes else ()),
                *_warmth(step, told, passed, which),
            ]
        case Add(minutes=minutes):
            timed = _time(step, "The adding", minutes, which) if minutes else ()
            return [*timed, *_warmth(step, "The adding", facts, which)]
        case MakeUp() | Finish() | Measurement():
            return list(_warmth(step, f"The step {facts.KIND}", facts, which))
        case Look():
            return [
                remark("look", finding.what, "Look again as the formula asks; this look is kept.")
                for finding in _warmth(step, "The look", facts, which)
            ]
        case _:
            return []


def _time(step: FormulaStep, told: str, minutes: int, which: str) -> Iterator[Finding]:
    low, high = step.minutes_min, step.minutes_max
    if (low is not None and minutes < low) or (high is not None and minutes > high):
        asked = span(low, high, time_of)
        yield needs_reason(
            "time", f"{told} took {time_of(minutes)}; {which} asks for {asked}.", SAY_WHY
        )


def _warmth(step: FormulaStep, told: str, facts: Facts, which: str) -> Iterator[Finding]:
    low, high = step.temp_min_mdegc, step.temp_max_mdegc
    temp: int | None = getattr(facts, "temp_mdegc", None)
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
    if least is None or passed.pass_no != 1 or (laid and laid.amount >= least.amount):
        return
    there = f"a precoat of {show(laid.amount, laid.measure)}" if laid else "no precoat"
    yield needs_reason(
        "precoat",
        f"{told} had {there}; {which} asks for at least {show(least.amount, least.measure)}.",
        SAY_WHY,
    )


def yield_is_expected(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What came out lies between the shares of the target that the formula expects."""
    facts, formula, lot = draft.facts, scene.control.formula, scene.lot
    start = latest(lot, Start) if lot else None
    if not isinstance(facts, Finish) or formula is None or start is None:
        return
    low, high = formula.yield_min_mpct, formula.yield_max_mpct
    share = 100_000 * facts.volume.amount / start.target.amount
    if (low is not None and share < low) or (high is not None and share > high):
        yield needs_reason(
            "yield",
            f"{facts.volume.written} are {per_cent_outside(share, low, high)} of the "
            f"{start.target.written} aimed at; {version_of(formula)} expects "
            f"{span(low, high, per_cent_exactly)}.",
            "Find out why, and say it with --because.",
        )


RULES: tuple[Rule, ...] = (
    formula_is_in_use,
    formula_is_checked,
    materials_are_the_formulas,
    nothing_is_short,
    step_is_kept,
    yield_is_expected,
)
