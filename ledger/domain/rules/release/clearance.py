"""The gate of a lot that follows a formula: its papers, its inputs and its claims.

Guarantees: deviations, inputs, labels, strength and the second person are asked after, all at once,
besides what is asked of every lot.
"""

from collections.abc import Iterator
from datetime import date

from ledger.domain.entries import (
    Bottle,
    Check,
    Deviation,
    Draft,
    Filter,
    Finish,
    Labels,
    Limit,
    Start,
)
from ledger.domain.entries.choices import Bound, LimitBasis, LimitUnit, LotType
from ledger.domain.lots.control import Control
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, latest
from ledger.domain.masters.formulas import version_of
from ledger.domain.masters.limits import Holds, holds_on, is_above, is_below, is_passed
from ledger.domain.rules.figures import per_cent_exactly, per_cent_outside, span
from ledger.domain.rules.finding import Finding, Rule, remark
from ledger.domain.rules.release.barriers import stands_in_the_way, to_release

WEAK = tuple((LimitUnit.PERCENT_VOL, bound) for bound in (Bound.AT_MOST, Bound.LESS_THAN))
"""Units and bounds of limits whose words claim that something is weak."""


def deviations_are_reviewed(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Somebody has checked each deviation, or the entry that it is about."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    checked = {e.facts.about for e in entries if isinstance(e.facts, Check)}
    for entry in entries:
        facts = entry.facts
        if not isinstance(facts, Deviation) or facts.rule == "release":
            continue
        if not {entry.seq, facts.about} & checked:
            yield stands_in_the_way(
                f"Deviation {entry.seq} has not been reviewed: {facts.text}",
                "Review it",
                f"pottle check --entry {entry.seq}",
            )


def inputs_are_released(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was made here and went in was itself released."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    for source in scene.control.inputs:
        if source.product_kind and source.status in (Status.MAKING, Status.FINISHED, Status.REWORK):
            yield stands_in_the_way(
                f"{source.code}, which is in {lot.code}, is not released; it is {source.status}.",
                "Decide about it first",
                f"pottle release {source.code}",
            )


def labels_are_reconciled(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Labels printed are those on bottles and those spoiled, one a bottle."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None or lot.opened.lot_type is not LotType.PACKED:
        return
    told = [entry.facts for entry in lot.entries]
    sheets = [facts for facts in told if isinstance(facts, Labels)]
    filled = latest(lot, Bottle)
    printed = sum(sheet.printed for sheet in sheets)
    used = sum(sheet.used or 0 for sheet in sheets)
    spoiled = sum(sheet.spoiled or 0 for sheet in sheets)
    count = filled.count if filled else 0
    if not sheets:
        yield stands_in_the_way(
            f"No labels are in the book of {lot.code}.",
            "Print them",
            f"pottle label {lot.code} --out labels.pdf",
        )
    elif printed != used + spoiled or used != count:
        yield stands_in_the_way(
            f"The labels of {lot.code} do not add up: {printed} printed, {used} used on {count} "
            f"bottles, {spoiled} spoiled.",
            "Record what became of them",
            f"pottle label {lot.code} --used N --spoiled N",
        )


def strength_is_claimed(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The strength as made lies within what the formula and its claim say."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    low, high, strength = formula.abv_min_mpct, formula.abv_max_mpct, scene.control.strength_mpct
    yield from _claim_holds(lot, scene.control, draft.happened.local().date())
    if low is None and high is None:
        return
    asked = f"{span(low, high, per_cent_exactly)} vol"
    claim = f', and its label says "{formula.claim}"' if formula.claim else ""
    if strength is None:
        yield remark(
            "strength",
            f"The strength of {lot.code} is not known; {version_of(formula)} asks for "
            f"{asked}{claim}.",
            f"Measure it: pottle measure {lot.code} abv READING",
        )
    elif (low is not None and is_below(strength, low)) or (
        high is not None and is_above(strength, high)
    ):
        yield stands_in_the_way(
            f"{lot.code} has {per_cent_outside(strength, low, high)} vol; {version_of(formula)} "
            f"asks for {asked}{claim}.",
            "Measure it, and mend it or its label.",
        )


def _claim_holds(lot: LotState, control: Control, on: date) -> Iterator[Finding]:
    """Compare a claim to be weak with the strength that it is about."""
    claim, strength = control.claim, control.strength_mpct
    if claim is None or (claim.unit, claim.bound) not in WEAK:
        return
    told, holds = _claimed(claim), holds_on(claim, on)
    if holds is not Holds.NOW:
        days = f"since {claim.since}" if holds is Holds.TO_COME else f"until {claim.until}"
        yield remark(
            "claim",
            f"The strength of {lot.code} is not compared on {on}: {told}, which holds {days}.",
            f"Look at the limit: pottle limits {claim.code}",
        )
    elif claim.basis is not LimitBasis.IN_PRODUCT:
        yield remark(
            "claim",
            f"The strength of {lot.code} does not settle it: {told} as served.",
            f"Look at the glass: pottle serving {lot.code}",
        )
    elif strength is None:
        yield remark(
            "claim",
            f"The strength of {lot.code} is not known; {told}.",
            f"Measure it: pottle measure {lot.code} abv READING",
        )
    elif is_passed(strength / 1000, claim):
        yield stands_in_the_way(
            f"{lot.code} has {per_cent_outside(strength, None, _most(claim))} vol; {told}.",
            f"Leave the claim off the label; the source is {claim.citation}.",
        )


def _most(claim: Limit) -> int:
    """Return the strength that a claim to be weak allows, in thousandths of a per cent."""
    return claim.value_micro // 1000


def _claimed(claim: Limit) -> str:
    bound = str(claim.bound).replace("-", " ")
    return (
        f"its label claims {claim.says or claim.code} ({claim.place}), for {bound} "
        f"{_most(claim) / 1000:g} % vol"
    )


def somebody_else_looked(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A release by one of its makers, which only its makers have checked, is said to be one."""
    lot = to_release(draft, scene)
    if lot is None or scene.control.formula is None:
        return
    if is_self_released(lot, draft.by):
        yield remark(
            "self-released",
            f"{lot.code} is self-released: {draft.by} made it and releases it, and nobody but its "
            "makers has checked it.",
            f"Have it checked: pottle check {lot.code} --by INITIALS",
        )


def is_self_released(lot: LotState, by: str | None) -> bool:
    """Return whether who releases a lot worked on it, and only its makers have checked it."""
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    made = (Start, Filter, Finish, Bottle)
    makers = {e.draft.by for e in entries if isinstance(e.facts, made)}
    checkers = {e.draft.by for e in entries if isinstance(e.facts, Check)}
    return by in makers and not checkers - makers


RULES: tuple[Rule, ...] = (
    deviations_are_reviewed,
    inputs_are_released,
    labels_are_reconciled,
    strength_is_claimed,
    somebody_else_looked,
)
