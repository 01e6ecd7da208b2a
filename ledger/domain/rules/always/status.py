"""Status: lots that are held, rejected or past their date are not used without a reason.

Guarantees: looks through to what a lot was made of. Refuses: struck lots; all else for want of a
reason only, which is kept as a deviation.
"""

from collections.abc import Iterator

from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Complaint,
    Draft,
    Filter,
    MakeUp,
    Move,
    Note,
    Receipt,
    Rinse,
    Start,
    Strike,
)
from ledger.domain.entries.choices import FoodGrade, LotType, MoveAs, Purpose
from ledger.domain.lots.lot import BARRED, Status
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import (
    GOES_TO_PEOPLE,
    LotState,
    food_grade,
    is_past_date,
    is_trial,
    latest,
    status,
)
from ledger.domain.rules.finding import Finding, Rule, impossible, needs_reason

IS_SALE = frozenset({MoveAs.SALE, MoveAs.ON_RETURN})
"""Moves for which somebody pays."""

SAY_WHY = "Use another lot; if it must be this one, say why with --because."


def struck_is_gone(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Nothing is done to a struck lot, and nothing drawn on it; words about it may be written."""
    if isinstance(draft.facts, Note | Check | Complaint | Strike):
        return
    for state in (*([scene.lot] if scene.lot else []), *scene.sources):
        if status(state) is Status.STRUCK:
            yield impossible(
                "struck",
                f"{state.code} was struck out as a mistake, so there is no such lot.",
                "Name the lot that it really was; pottle stock lists what is on hand.",
            )


def sources_are_fit(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is drawn on is neither held nor rejected nor past its date, and fit for food."""
    if not isinstance(draft.facts, Add | Bottle | Filter | MakeUp | Rinse):
        return
    for state in scene.sources:
        yield from _unfit(draft, state, is_tried=_is_tried(scene.lot, state))
        yield from _graded(state, scene.lot)
        if isinstance(draft.facts, Bottle) and status(state) is Status.REWORK:
            yield needs_reason(
                "rework",
                f"{state.code} is {Status.REWORK}, not to be filled as it is.",
                f"Release it when it is right: pottle release {state.code} (or say why with "
                "--because).",
            )


def goods_are_fit(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is sent to people is released, in date, and made of nothing held."""
    facts = draft.facts
    if not isinstance(facts, Move) or facts.moved_as not in GOES_TO_PEOPLE or not scene.lot:
        return
    yield from _unfit(draft, scene.lot)
    now, is_ours = status(scene.lot), scene.lot.opened.lot_type is not LotType.RECEIVED
    # Of what is barred or struck it was said already.
    if is_ours and now not in BARRED | {Status.RELEASED, Status.STRUCK}:
        yield needs_reason(
            "not released",
            f"{scene.lot.code} is not released; it is {now}.",
            f"Release it first: pottle release {scene.lot.code} (or say why with --because).",
        )


def _is_tried(lot: LotState | None, state: LotState) -> bool:
    """Return whether a lot is what the plan of a trial drew for a jar."""
    start = latest(lot, Start) if lot else None
    if start is None or start.planned_by is None:
        return False
    return state.code in {factor.planned for factor in start.factors}


def _graded(state: LotState, lot: LotState | None) -> Iterator[Finding]:
    """What is not fit for food asks a reason; so does a delivery nobody knows it of, for sale."""
    if food_grade(state) is FoodGrade.NO:
        yield needs_reason(
            "food grade", f"{state.code} is not fit for food by its papers.", SAY_WHY
        )
    receipt = latest(state, Receipt)
    is_unknown = receipt is not None and receipt.food_grade is FoodGrade.UNKNOWN
    if is_unknown and lot and not is_trial(lot):
        yield needs_reason(
            "food grade",
            f"{state.code} came without word whether it is fit for food, and {lot.code} is for "
            "sale.",
            f"Ask its supplier, and then: pottle correct {state.seq} --set food_grade=yes (or say "
            "why with --because).",
        )


def _unfit(draft: Draft, state: LotState, *, is_tried: bool = False) -> Iterator[Finding]:
    now = status(state)
    # A planned trial is made to find out about what is held, so its jars ask for no reason.
    if now in BARRED and not is_tried:
        yield needs_reason("barred", f"{state.code} is {now}.", SAY_WHY)
    day = draft.happened.local().date()
    if is_past_date(state, day):
        yield needs_reason(
            "past date",
            f"{state.code} was best before {state.best_before}; this is {day}.",
            SAY_WHY,
        )
    if state.barred_inputs and not is_tried:
        yield needs_reason(
            "barred input",
            f"{state.code} is made of {', '.join(state.barred_inputs)}, "
            "now held, rejected or recalled.",
            SAY_WHY,
        )


def goods_are_for_sale(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is sold was made here, and made for sale."""
    facts = draft.facts
    if not isinstance(facts, Move) or facts.moved_as not in IS_SALE or not scene.lot:
        return
    if scene.lot.opened.lot_type is LotType.RECEIVED:
        yield needs_reason(
            "received lot sold",
            f"{scene.lot.code} is a received lot, not something made here.",
            "Name the packed lot that was sold; if it must be this one, say why with --because.",
        )
    if is_trial(scene.lot):
        yield needs_reason(
            "trial", f"{scene.lot.code} is of a trial batch, not made for sale.", SAY_WHY
        )


def trials_stay_apart(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No trial batch goes into a batch that is for sale."""
    start = latest(scene.lot, Start) if scene.lot else None
    if not isinstance(draft.facts, Add | MakeUp) or not start or start.purpose is Purpose.TRIAL:
        return
    for state in scene.sources:
        if is_trial(state):
            yield needs_reason(
                "trial",
                f"{state.code} is of a trial batch, but {draft.lot} is made for sale.",
                SAY_WHY,
            )


RULES: tuple[Rule, ...] = (
    struck_is_gone,
    sources_are_fit,
    goods_are_fit,
    goods_are_for_sale,
    trials_stay_apart,
)
