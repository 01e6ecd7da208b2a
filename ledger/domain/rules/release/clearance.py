"""The gate of a lot that follows a formula: its papers, its inputs and its claims.

Guarantees: deviations, inputs, labels, strength and the second person are asked after, all at once,
besides what is asked of every lot.
"""

from collections.abc import Iterator
from datetime import date

from ledger.domain.entries import (
    Check,
    Deviation,
    Draft,
    Entry,
    Limit,
    entries_of,
)
from ledger.domain.entries.choices import Bound, LimitBasis, LimitUnit, LotType
from ledger.domain.lots.control import Control
from ledger.domain.lots.labels import count_of
from ledger.domain.lots.lot import Status
from ledger.domain.lots.makers import is_self_released
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState
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
    for entry in entries_of(entries, Deviation):
        if entry.facts.rule == "release":
            continue
        about = {entry.seq, entry.facts.about}
        reviewers = {e.draft.by for e in entries_of(entries, Check) if e.facts.about in about}
        if not reviewers:
            yield stands_in_the_way(
                f"Deviation {entry.seq} has not been reviewed: {entry.facts.text}",
                "Review it",
                f"pottle check --entry {entry.seq}",
            )
        elif reviewers == {entry.draft.by}:
            yield _reviewed_alone(entry, has_others=len(scene.people) > 1)


def _reviewed_alone(entry: Entry[Deviation], *, has_others: bool) -> Finding:
    """Return what is said of a deviation that only who departed has reviewed."""
    what = f"Deviation {entry.seq} was reviewed by {entry.draft.by} alone, whose own it is"
    if not has_others:
        return remark("reviewed alone", f"{what}: {entry.facts.text}")
    return stands_in_the_way(
        f"{what}: {entry.facts.text}",
        "Have another person review it",
        f"pottle check --entry {entry.seq} --by INITIALS",
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
    labels = count_of(lot)
    if not labels.printed:
        yield stands_in_the_way(
            f"No labels are in the book of {lot.code}.",
            "Print them",
            f"pottle label {lot.code} --out labels.pdf",
        )
    elif not labels.adds_up:
        yield stands_in_the_way(
            f"The labels of {lot.code} do not add up: {labels.printed} printed, {labels.used} used "
            f"on {labels.bottles} bottles, {labels.spoiled} spoiled.",
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
    if lot is None:
        return
    if is_self_released(lot, draft.by):
        yield remark(
            "self-released",
            f"{lot.code} is self-released: {draft.by} made it and releases it, and nobody but its "
            "makers has checked it.",
            f"Have it checked: pottle check {lot.code} --by INITIALS",
        )


RULES: tuple[Rule, ...] = (
    deviations_are_reviewed,
    inputs_are_released,
    labels_are_reconciled,
    strength_is_claimed,
    somebody_else_looked,
)
