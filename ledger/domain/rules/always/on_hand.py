"""Amounts: what was taken was there, in a measure that fits.

Guarantees: volume and weight are exchanged only by a known density. Refuses: amounts in a measure
that the lot cannot be counted in; readings that no liquid can give; without a reason, stock below
zero and more back than went out.
"""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from ledger.domain.amounts.money import coins
from ledger.domain.amounts.quantity import Measure, Quantity, reckoned, show, show_alike
from ledger.domain.entries import (
    Add,
    Bottle,
    Count,
    Draft,
    Facts,
    Filter,
    Labels,
    MakeUp,
    Material,
    Measurement,
    Move,
    Receipt,
    Rinse,
)
from ledger.domain.entries.choices import Measured, MoveAs
from ledger.domain.lots.movements import EACH, movements
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import GOES_TO_PEOPLE, LotState, in_measure_of
from ledger.domain.rules.always.volumes import SLACK
from ledger.domain.rules.finding import WORDS, Finding, Rule, impossible, needs_reason, remark

LIMITS = {
    Measured.BRIX: ("0", "100"),
    Measured.ABV: ("0", "100"),
    Measured.DENSITY: ("0.01", "23"),
    Measured.PH: ("0", "14"),
    Measured.TEMPERATURE: ("-273.15", "1000"),
    Measured.WEIGHT: ("0", "1000000000"),
}
"""Between what any reading lies, in its unit; no powder is lighter and no metal heavier."""


def measure_fits(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is taken from a lot can be counted in the lot's own measure."""
    facts, lot = draft.facts, scene.lot
    if isinstance(facts, Add):
        source = scene.source(facts.source)
        if source and in_measure_of(source, facts.amount) is None:
            yield _unfit(source, facts.amount)
    elif isinstance(facts, Move | Count) and lot and facts.amount.measure is not lot.measure:
        yield _wrong_measure(lot, facts.amount)


def _wrong_measure(state: LotState, amount: Quantity) -> Finding:
    return impossible(
        "measure",
        f"{amount.written} does not fit {state.code}, which is counted {WORDS[state.measure]}.",
        f"Give the amount {WORDS[state.measure]}.",
    )


def _unfit(state: LotState, amount: Quantity) -> Finding:
    if Measure.UEACH in (amount.measure, state.measure):
        return _wrong_measure(state, amount)
    material = state.material.code if state.material else None
    what = f"material change {material} --density" if material else f"measure {state.code} density"
    return impossible(
        "density",
        f"{amount.written} cannot be turned into {WORDS[state.measure][3:]} of {state.code}: "
        "its density is not in the book.",
        f"Record it with: pottle {what} FIGURE (in g/mL, from the certificate), or give the "
        f"amount {WORDS[state.measure]}.",
    )


def whole_pieces(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Counted things come in whole numbers."""
    if not isinstance(draft.facts, Receipt | Add | Move | Count):
        return
    amount = draft.facts.amount
    if amount.measure is Measure.UEACH and amount.amount % EACH:
        yield impossible(
            "whole",
            f"{amount.written} is not a whole number of pieces.",
            "Give a whole number.",
        )


def enough_on_hand(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No more is taken than the book says is there."""
    states = (*scene.sources, *([scene.lot] if scene.lot else []))
    taken = _taken(draft, scene)
    given_in = _measures(draft, scene)
    for state in states:
        # Popped, since a lot may be worked on and drawn on at once, and is told once.
        wanted = taken.pop(state.code, 0)
        if given_in.get(state.code, state.measure) is not state.measure:
            continue
        if wanted > max(state.on_hand, 0) and not _as_shown(state, wanted):
            asked, there = show_alike(state.measure, wanted, state.on_hand)
            yield needs_reason(
                "on hand",
                f"{asked} is more than is there of {state.code}: the book says {there}.",
                "Check the lot and the amount; if it is so, say why with --because.",
            )


def _as_shown(state: LotState, wanted: int) -> bool:
    """Return whether an amount is within a reckoned volume as it is told, which is rounded."""
    return state.is_reckoned and wanted <= reckoned(state.on_hand)


def _taken(draft: Draft, scene: Scene) -> dict[str, int]:
    totals: dict[str, int] = {}
    for posting in movements(draft, scene)[0]:
        if posting.source:
            totals[posting.source] = totals.get(posting.source, 0) + posting.taken
    return totals


def _measures(draft: Draft, scene: Scene) -> dict[str | None, Measure]:
    """Return in what the draft counts what it takes; a misfit is another rule's to tell."""
    match draft.facts:
        case Move(amount=amount):
            return {draft.lot: amount.measure}
        case MakeUp(source=source, used=amount) | Rinse(source=source, volume_in=amount):
            return {source: _counted(scene.source(source), amount)}
        case Bottle() as facts:
            each = dict.fromkeys((facts.bottles, facts.caps), Measure.UEACH)
            return {**each, facts.source: _counted(scene.source(facts.source), facts.drawn)}
        case Filter(paper=str(code)) | Labels(stock=str(code)):
            return {code: Measure.UEACH}
        case _:
            return {}


def _counted(source: LotState | None, amount: Quantity) -> Measure:
    """Return in what an amount is counted that a lot gives, by its density where that is known."""
    is_known = source is not None and in_measure_of(source, amount) is not None
    return source.measure if source and is_known else amount.measure


def count_is_near(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What a count finds is what the book says, or nearly; the rest is explained."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Count) or facts.amount.measure is not lot.measure:
        return
    off = facts.amount.amount - lot.on_hand_then
    if off == 0:
        return
    less = "less" if off < 0 else "more"
    so_much = (
        f"{facts.amount.written} of {lot.code} are"
        if facts.amount.amount
        else f"Nothing of {lot.code} is"
    )
    told = (
        f"{so_much} there, {show(abs(off), lot.measure)} {less} "
        f"than the {show(lot.on_hand_then, lot.measure)} of the book."
    )
    # Things are counted to the last; what is measured may be off by reading and warmth.
    if lot.measure is Measure.UEACH or abs(off) * SLACK > max(lot.on_hand_then, 0):
        yield needs_reason("count", told, "Count again; if it is so, say why with --because.")
    else:
        yield remark("count", told, "The book takes what was found.")


def returned_was_sent(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No more comes back than was out then, and leaves enough out for what came back later."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Move) or facts.moved_as is not MoveAs.RETURNED:
        return
    out = _out_from(len(scene.so_far(draft)), [entry.facts for entry in lot.entries])
    if facts.amount.measure is lot.measure and facts.amount.amount > out:
        yield needs_reason(
            "returned",
            f"{facts.amount.written} cannot have come back of {lot.code}: by the book "
            f"{show(max(out, 0), lot.measure)} of what went out is still out.",
            "Check the code on what came back; if it is so, say why with --because.",
        )


def _out_from(place: int, told: Sequence[Facts]) -> int:
    """Return the least that was out after the first `place` entries of a lot, or later."""
    out = [0]
    for facts in told:
        out.append(out[-1] + _went_out(facts))
    return min(out[place:])


def _went_out(facts: Facts) -> int:
    """Return what went out to people by an entry; below zero what came back."""
    if not isinstance(facts, Move):
        return 0
    if facts.moved_as is MoveAs.RETURNED:
        return -facts.amount.amount
    return facts.amount.amount if facts.moved_as in GOES_TO_PEOPLE else 0


def readings_are_possible(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A reading lies between what its instrument can show of anything."""
    match draft.facts:
        case Measurement() as facts:
            what, unit, millionths = facts.what, facts.unit, facts.reading_micro
        case Receipt(density_mg_per_l=int(millionths)) | Material(density_mg_per_l=int(millionths)):
            what, unit = Measured.DENSITY, "g/mL"
        case _:
            return
    low, high = LIMITS[what]
    if not Decimal(low) <= Decimal(millionths) / EACH <= Decimal(high):
        yield impossible(
            "reading",
            f"{Decimal(millionths) / EACH:f} {unit} cannot be a reading of {what}: "
            f"it lies between {low} and {high} {unit}.",
            f"Read it again and give it in {unit}.",
        )


def duty_is_in_the_cost(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Spirit duty is a part of what a delivery cost."""
    facts = draft.facts
    if not isinstance(facts, Receipt) or facts.cost_minor is None:
        return
    minor = facts.duty_minor or 0
    if minor > facts.cost_minor:
        duty, cost = (coins(each, facts.cost_digits) for each in (minor, facts.cost_minor))
        yield impossible(
            "duty",
            f"A duty of {duty} cannot be part of a cost of {cost}.",
            "Give the cost with the duty in it.",
        )


RULES: tuple[Rule, ...] = (
    measure_fits,
    whole_pieces,
    enough_on_hand,
    count_is_near,
    returned_was_sent,
    readings_are_possible,
    duty_is_in_the_cost,
)
