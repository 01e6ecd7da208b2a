"""The gate of a lot that follows a formula: what stands in the way of its release.

Guarantees: every step, look, limit and claim of the formula is asked for, all at once, besides
what is asked of every lot. Refuses: nothing by itself; a named person may override with a reason.
"""

from collections.abc import Iterator
from datetime import datetime

from ledger.domain.control import Control
from ledger.domain.entries import (
    Bottle,
    Check,
    Deviation,
    Draft,
    Entry,
    Filter,
    Finish,
    Formula,
    Labels,
    Look,
    Start,
)
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.entries.words import (
    Bound,
    Grade,
    LimitUnit,
    LookedAt,
    LotType,
    ProductKind,
)
from ledger.domain.formulas import steps_for
from ledger.domain.lots import LotState, Status, last_look, latest, opener
from ledger.domain.rules.finding import Finding, Rule, remark
from ledger.domain.rules.in_words import degrees, per_cent_exactly, per_cent_outside, span, time_of
from ledger.domain.rules.release import FLAWS, changes, stands_in_the_way, to_release
from ledger.domain.scene import Scene

GRADES = tuple(Grade)
"""The grades, best to worst."""
AFTER_PACKING = frozenset({"bottle", "labels"})
"""Steps after which those of a formula look after goods that have left already."""
ASKED_FOR = frozenset({"rest", "filter", "rinse", "decant", "measure", "makeup"})
"""Verbs of steps of which an entry must be in the book."""
NEXT = {
    "rest": "rest {lot} --for PURPOSE --started WHEN --until WHEN",
    "filter": "filter {lot} --medium paper --pore SIZE --out VOLUME",
    "rinse": "rinse {lot} --with LOT --in VOLUME --out VOLUME --to WHERE",
    "decant": "decant {lot} VOLUME",
    "measure": "measure {lot} WHAT READING",
    "makeup": "makeup {lot} VOLUME --with LOT",
}
"""How each is recorded."""


def steps_are_done(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Every step of the formula up to the filling is in the book."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    making = lot.bulk or lot
    for number, step in _before_packing(formula):
        if step.verb in ASKED_FOR and not _is_done(step, making, formula):
            yield stands_in_the_way(
                f"Step {number} of {_which(formula)}, {_named(step)}, is not in the book of "
                f"{making.code}.",
                f"Record it: pottle {NEXT[step.verb].format(lot=making.code)}",
            )
    asked = sum(step.passes_min or 1 for step in formula.steps if step.verb == "filter")
    passed = sum(isinstance(entry.draft.facts, Filter) for entry in making.entries)
    if 0 < passed < asked:
        yield stands_in_the_way(
            f"{making.code} had {passed} of the {asked} passes that {_which(formula)} asks for.",
            f"Filter it again: pottle {NEXT['filter'].format(lot=making.code)}",
        )


def _before_packing(formula: Formula) -> Iterator[tuple[int, FormulaStep]]:
    for number, step in enumerate(formula.steps, 1):
        if step.verb in AFTER_PACKING:
            return
        yield number, step


def _is_done(step: FormulaStep, lot: LotState, formula: Formula) -> bool:
    return any(step in steps_for(formula, entry.draft.facts) for entry in lot.entries)


def _which(formula: Formula) -> str:
    return f"{formula.code} version {formula.version}"


def _named(step: FormulaStep) -> str:
    return f"rest to {step.rest_for}" if step.rest_for else step.verb


def looks_are_done(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Each look that the formula asks for before filling was taken, as asked, and was good."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    for _, step in _before_packing(formula):
        if step.verb == "look":
            yield from _look_is_good(step, lot, formula)


def _look_is_good(step: FormulaStep, lot: LotState, formula: Formula) -> Iterator[Finding]:
    seen = [look for look in _looks(lot) if _is_as_asked(step, look, lot)]
    if not seen:
        how = f" --dilution {step.dilution}" if step.dilution else ""
        yield stands_in_the_way(
            f"{lot.code} has not been looked at {_asked(step)} since it last changed, as "
            f"{_which(formula)} asks.",
            f"Look at it: pottle look {lot.code} GRADE --of {step.looked_at or 'neat'}{how}",
        )
        return
    look = seen[-1].draft.facts
    assert isinstance(look, Look)
    if step.worst and GRADES.index(look.grade) > GRADES.index(step.worst):
        yield stands_in_the_way(
            f"Looked at {_asked(step)}, {lot.code} was {look.grade}; {_which(formula)} asks for "
            f"{step.worst} or better.",
            f"Clear it and look again, or hold it: pottle hold {lot.code}",
        )


def _looks(lot: LotState, filling: Entry | None = None) -> list[Entry]:
    """Return the looks at a lot and its bulk since they last changed.

    What was left of a bulk may change after the filling: what is in the bottles did not.
    """
    seen = _looks(lot.bulk, opener(lot)) if lot.bulk else []
    for entry in lot.entries:
        if changes(entry.draft.facts):
            if filling and entry.position > filling.position:
                break
            seen = []
        elif isinstance(entry.draft.facts, Look):
            seen.append(entry)
    return seen


def _is_as_asked(step: FormulaStep, entry: Entry, lot: LotState) -> bool:
    look = entry.draft.facts
    if not isinstance(look, Look) or step.looked_at not in (None, look.looked_at):
        return False
    if step.dilution not in (None, look.dilution):
        return False
    low, high, temp = step.temp_min_mdegc, step.temp_max_mdegc, look.temp_mdegc
    is_cold_enough = high is None or (temp is not None and temp <= high)
    is_warm_enough = low is None or (temp is not None and temp >= low)
    is_old_enough = step.age_minutes is None or _age(entry, look, lot) >= step.age_minutes
    return is_cold_enough and is_warm_enough and is_old_enough


def _age(entry: Entry, look: Look, lot: LotState) -> int:
    """Return how old the sample was in minutes: as told, else since the making ended."""
    if look.age_minutes is not None:
        return look.age_minutes
    made = finished_at(lot.bulk or lot)
    return round((entry.draft.happened.at - made).total_seconds() / 60) if made else 0


def finished_at(lot: LotState) -> datetime | None:
    """Return when the making of a lot ended, or None."""
    ends = [e.draft.happened.at for e in lot.entries if isinstance(e.draft.facts, Finish)]
    return ends[-1] if ends else None


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
    meant = formula.wanted_clarity
    is_cloud = formula.product_kind is ProductKind.GUM_EMULSION
    if meant is not None:
        off = GRADES.index(look.grade) - GRADES.index(meant)
        if (off < 0) if is_cloud else (off > 0):
            better = "or cloudier" if is_cloud else "or better"
            yield stands_in_the_way(
                f"The last look at {lot.code} found it {look.grade}; {_which(formula)} wants it "
                f"{meant} {better}.",
                f"Hold it: pottle hold {lot.code}, or rework it.",
            )
    if flaws := [flaw for flag, flaw in FLAWS.items() if getattr(look, flag)]:
        yield stands_in_the_way(
            f"The last look at {lot.code} found {' and '.join(flaws)}.",
            f"Hold it: pottle hold {lot.code}, or rework it.",
        )


def deviations_are_reviewed(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Somebody has checked each deviation, or the entry that it is about."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    checked = {e.draft.facts.about for e in entries if isinstance(e.draft.facts, Check)}
    for entry in entries:
        facts = entry.draft.facts
        if not isinstance(facts, Deviation) or facts.rule == "release":
            continue
        if not {entry.seq, facts.about} & checked:
            yield stands_in_the_way(
                f"Deviation {entry.seq} has not been reviewed: {facts.text}",
                f"Review it: pottle check --entry {entry.seq}",
            )


def inputs_are_released(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was made here and went in was itself released."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    for item in scene.control.inputs:
        if item.product_kind and item.status in (Status.MAKING, Status.FINISHED, Status.REWORK):
            yield stands_in_the_way(
                f"{item.code}, which is in {lot.code}, is not released; it is {item.status}.",
                f"Decide about it first: pottle release {item.code}",
            )


def labels_are_reconciled(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Labels printed are those on bottles and those spoiled, one a bottle."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None or lot.opened.lot_type is not LotType.PACKED:
        return
    told = [entry.draft.facts for entry in lot.entries]
    sheets = [facts for facts in told if isinstance(facts, Labels)]
    filled = latest(lot, Bottle)
    printed = sum(item.printed for item in sheets)
    used = sum(item.used or 0 for item in sheets)
    spoiled = sum(item.spoiled or 0 for item in sheets)
    count = filled.count if filled else 0
    todo = f"Record what became of them: pottle label {lot.code} --used N --spoiled N"
    if not sheets:
        yield stands_in_the_way(f"No labels are in the book of {lot.code}.", todo)
    elif printed != used + spoiled or used != count:
        yield stands_in_the_way(
            f"The labels of {lot.code} do not add up: {printed} printed, {used} used on {count} "
            f"bottles, {spoiled} spoiled.",
            todo,
        )


def strength_is_claimed(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The strength as made lies within what the formula and its claim say."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    low, high, strength = formula.abv_min_mpct, formula.abv_max_mpct, scene.control.strength_mpct
    yield from _claim_holds(lot, scene.control)
    if low is None and high is None:
        return
    asked = f"{span(low, high, per_cent_exactly)} vol"
    claim = f', and its label says "{formula.claim}"' if formula.claim else ""
    if strength is None:
        yield remark(
            "strength",
            f"The strength of {lot.code} is not known; {_which(formula)} asks for {asked}{claim}.",
            f"Measure it: pottle measure {lot.code} abv READING",
        )
    elif (low is not None and strength < low) or (high is not None and strength > high):
        yield stands_in_the_way(
            f"{lot.code} has {per_cent_outside(strength, low, high)} vol; {_which(formula)} asks "
            f"for {asked}{claim}.",
            "Measure it, and mend it or its label.",
        )


def _claim_holds(lot: LotState, control: Control) -> Iterator[Finding]:
    claim, strength = control.claim, control.strength_mpct
    if claim is None or strength is None or claim.unit is not LimitUnit.PERCENT_VOL:
        return
    most = claim.value_micro // 1000
    is_over = strength >= most if claim.bound is Bound.LESS_THAN else strength > most
    if claim.bound in (Bound.AT_MOST, Bound.LESS_THAN) and is_over:
        yield stands_in_the_way(
            f"{lot.code} has {per_cent_outside(strength, None, most)} vol; its label claims "
            f"{claim.says or claim.code} ({claim.place}), for "
            f"{str(claim.bound).replace('-', ' ')} {most / 1000:g} % vol.",
            f"Leave the claim off the label; the source is {claim.citation}.",
        )


def somebody_else_looked(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A release by the only person who worked on a lot is said to be one."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    if is_self_released(lot, draft.by):
        yield remark(
            "self-released",
            f"{lot.code} is self-released: {draft.by} made it and releases it, and no other "
            "person has checked it.",
            f"Have it checked: pottle check {lot.code} --by INITIALS",
        )


def is_self_released(lot: LotState, by: str | None) -> bool:
    """Return whether the person who releases a lot was the only one at work on it."""
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    made = (Start, Filter, Finish, Bottle)
    makers = {e.draft.by for e in entries if isinstance(e.draft.facts, made)}
    checkers = {e.draft.by for e in entries if isinstance(e.draft.facts, Check)}
    return by in makers and not checkers - makers


RULES: tuple[Rule, ...] = (
    steps_are_done,
    looks_are_done,
    clarity_is_wanted,
    deviations_are_reviewed,
    inputs_are_released,
    labels_are_reconciled,
    strength_is_claimed,
    somebody_else_looked,
)
