"""Release: what stands in the way of a lot's leaving.

Guarantees: the general gate for every lot: seen since it last changed, its yield recorded, made of
nothing held or out of date, not rejected or recalled before. Refuses: a release while anything
stands in the way, unless a named person overrides it with a reason.
"""

from collections.abc import Iterator

from ledger.domain.entries import (
    Add,
    Draft,
    Entry,
    Facts,
    Filter,
    Finish,
    Formula,
    Judge,
    Look,
    MakeUp,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import Grade, LotType, ProductKind, RinseTo, Verdict
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import (
    LotState,
    is_past_date,
    last_look,
    latest,
    opener,
    stand_of,
    status,
)
from ledger.domain.masters.formulas import look_steps
from ledger.domain.rules.finding import Finding, Rule, Severity, remark

CLEAR = frozenset({Grade.BRIGHT, Grade.CLEAR})
"""Grades at which nobody would call a lot cloudy."""
FLAWS = {
    "ring": "an oil ring",
    "floc": "flakes",
    "crystals": "crystals",
    "sediment": "sediment",
}
"""What a look may find amiss, in words."""


def gate(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """All that stands in the way of a release, at once."""
    lot = to_release(draft, scene)
    if lot is None:
        return
    making = lot.bulk if lot.bulk else lot
    if lot.opened.lot_type is not LotType.RECEIVED:
        yield from _seen(lot, making, scene.control.formula)
        yield from _measured(making, opener(lot) if lot.bulk else None)
    yield from _judged(lot)
    day = draft.happened.local().date()
    if is_past_date(lot, day):
        yield stands_in_the_way(
            f"{lot.code} was best before {lot.best_before}.",
            "Reject it",
            f'pottle reject {lot.code} --because "past its date"',
        )
    if lot.barred_inputs:
        yield stands_in_the_way(
            f"{lot.code} is made of {', '.join(lot.barred_inputs)}, now held, rejected or "
            "recalled.",
            "Decide about that lot first",
            f"pottle lot {lot.barred_inputs[0]}",
        )


def to_release(told: Draft, scene: Scene) -> LotState | None:
    """Return the lot that a draft releases, or None."""
    facts = told.facts
    is_release = isinstance(facts, Judge) and facts.verdict is Verdict.RELEASE
    return scene.lot if is_release else None


def _seen(lot: LotState, making: LotState, formula: Formula | None) -> Iterator[Finding]:
    if unseen_since_hold(lot):
        yield stands_in_the_way(
            f"{lot.code} has not been looked at since it was put on hold.",
            "Look at it",
            f"pottle look {lot.code} GRADE --of neat",
        )
        return
    # What is in bottles changes no more, so any look at them counts; and where a formula asks for
    # a look at the end, that it is missing is told by the formula's own words.
    has_own = latest(lot, Look) and lot is not making
    if has_own or (formula and any(is_last for _, is_last in look_steps(formula))):
        return
    filling = opener(lot) if lot is not making else None
    if what := unseen(making, filling):
        yield stands_in_the_way(what, "Look at it", f"pottle look {lot.code} GRADE --of neat")


def unseen_since_hold(lot: LotState) -> bool:
    """Return whether a lot is on hold and nobody looked at it, or at its bulk, since."""
    if status(lot) is not Status.HELD:
        return False
    held = [e.position for e in lot.entries if _is_hold(e.facts)][-1]
    both = (*lot.entries, *(lot.bulk.entries if lot.bulk else ()))
    return not any(isinstance(e.facts, Look) and e.position > held for e in both)


def _is_hold(facts: Facts) -> bool:
    return isinstance(facts, Judge) and facts.verdict is Verdict.HOLD


def unseen(making: LotState, filling: Entry | None = None) -> str | None:
    """Return, as a sentence, that nobody looked at a lot since it last changed, or None.

    Args:
        making: The lot.
        filling: The filling of bottles out of it; what changed afterwards is not in them.
    """
    is_seen = was_ever_seen = False
    for entry in making.entries:
        if changes(entry.facts):
            if filling and entry.position > filling.position:
                break
            is_seen = False
        elif isinstance(entry.facts, Look):
            is_seen = was_ever_seen = True
    since = " since it last changed" if was_ever_seen else ""
    return None if is_seen else f"{making.code} has not been looked at{since}."


def changes(facts: Facts) -> bool:
    """Return whether an entry may have made the lot look otherwise, or says that it must.

    A making up is apart: it is remarked on, and does not stand in the way.
    """
    match facts:
        case Add() | Filter() | Rinse(went_to=RinseTo.BATCH):
            return True
        case Judge(verdict=Verdict.REWORK):
            return True
        case _:
            return False


def making_up_is_seen(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A lot that was made up after its last look may leave, but is remarked on.

    Water or a weaker spirit brings oil out of an essence; the strengths of the two, which would
    tell whether it can, are seldom both known and never cover a cold or unclean liquid.
    """
    lot = to_release(draft, scene)
    if lot is None or (lot.bulk and latest(lot, Look)):
        return
    making, filling = (lot.bulk, opener(lot)) if lot.bulk else (lot, None)
    made_up: MakeUp | None = None
    for entry in making.entries:
        is_bottled = filling is not None and entry.position > filling.position
        if isinstance(entry.facts, MakeUp) and not is_bottled:
            made_up = entry.facts
        elif isinstance(entry.facts, Look):
            made_up = None
    if made_up and not unseen(making, filling):
        yield remark(
            "looks",
            f"{making.code} was made up with {made_up.source} after its last look, which may have "
            "clouded it.",
            f"Look at it before it leaves: pottle look {lot.code} GRADE --of neat",
        )


def _measured(making: LotState, filling: Entry | None) -> Iterator[Finding]:
    # What went in after the filling is not in the bottles, and asks for no yield of theirs.
    told = [e for e in making.entries if filling is None or _is_of_filling(e, filling)]
    if making.opened.lot_type is LotType.MADE and not stand_of(told).is_finished:
        since = " since something went in" if latest(making, Finish) else ""
        yield stands_in_the_way(
            f"{making.code} has no yield in the book{since}.",
            "Finish it with what came out",
            f"pottle finish {making.code} VOLUME",
        )


def _is_of_filling(entry: Entry, filling: Entry) -> bool:
    return entry.position <= filling.position or isinstance(entry.facts, Finish)


def _judged(lot: LotState) -> Iterator[Finding]:
    now = status(lot)
    if now in (Status.REJECTED, Status.RECALLED):
        yield stands_in_the_way(
            f"{lot.code} is {now}.", "If it may leave after all, say why with --because."
        )


def released_already(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A release of what is released changes nothing, and is remarked on."""
    lot = to_release(draft, scene)
    if lot and status(lot) is Status.RELEASED and draft.corrects is None:
        yield remark(
            "release",
            f"{lot.code} was released already.",
            f"See by whom: pottle journal {lot.code}",
        )


def stands_in_the_way(what: str, todo: str, command: str | None = None) -> Finding:
    """Return a finding that stands in the way of a release.

    Args:
        what: What does.
        todo: What to do about it: a sentence, or the words before the command.
        command: What to type for it.
    """
    told = f"{todo}: {command}" if command else todo
    return Finding(Severity.GATE, "release", what, told, command)


def looks_right(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A lot without a formula that did not look clear may be meant so, but is remarked on."""
    lot = to_release(draft, scene)
    look = last_look(lot) if lot else None
    if lot is None or look is None or scene.control.formula is not None:
        return
    start = latest(lot.bulk or lot, Start)
    is_meant = start is not None and start.product_kind is ProductKind.GUM_EMULSION
    grade = "" if look.grade in CLEAR or is_meant else f"it {look.grade}"
    flaws = " and ".join(flaw for flag, flaw in FLAWS.items() if getattr(look, flag))
    if appearance := ", with ".join(part for part in (grade, flaws) if part):
        yield remark(
            "looks",
            f"The last look at {lot.code} found {appearance}.",
            f'If it should not be so: pottle hold {lot.code} --because "WHY"',
        )


RULES: tuple[Rule, ...] = (gate, released_already, looks_right, making_up_is_seen)
