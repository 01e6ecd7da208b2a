"""Making: volumes of a batch, before and after each act.

Guarantees: a filtrate is never more than what was filtered, and nothing comes out that did not go
in, but for what reading and warmth may add. Refuses: weights where a volume is meant.
"""

from collections.abc import Iterable, Iterator

from ledger.domain.amounts.quantity import Measure, Quantity, show, show_apart
from ledger.domain.entries import (
    Bottle,
    Decant,
    Draft,
    Entry,
    Filter,
    Finish,
    Formula,
    MakeUp,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, is_finished, is_liquid, most_it_can_hold_ul
from ledger.domain.rules.always.volumes import (
    MIXING,
    PLAIN_NAMES,
    amounts_of,
    are_volumes,
    is_well_over,
    there_was,
    was_there,
)
from ledger.domain.rules.finding import Finding, Rule, impossible, needs_reason, remark


def volumes_are_volumes(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Bench volumes are given by volume."""
    facts = draft.facts
    if isinstance(facts, Formula | Start | Filter | Rinse | Decant | MakeUp | Finish | Bottle):
        for name, amount in amounts_of(facts):
            is_weight = name == "precoat"
            if amount.measure is not (Measure.MG if is_weight else Measure.UL):
                kind = "weight" if is_weight else "volume"
                yield impossible(
                    "volume",
                    f"{amount.written} is not a {kind}, so it cannot be the {PLAIN_NAMES[name]}.",
                    f"Give a {kind}, such as {'15 g' if is_weight else '430 mL'}.",
                )


def filtrate_was_there(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A filtrate is at most what was put on the filter, which is at most what was there."""
    facts = draft.facts
    if not isinstance(facts, Filter) or not are_volumes(facts.volume_in, facts.volume_out):
        return
    if scene.lot:
        yield from was_there(scene.lot, facts.volume_out, "came through the filter")
        # Of an empty lot all was said already.
        if most_it_can_hold_ul(scene.lot) <= 0:
            return
    if facts.volume_out.amount > facts.volume_in.amount:
        yield impossible(
            "filtrate",
            f"{facts.volume_out.written} of filtrate is more than the "
            f"{facts.volume_in.written} that went onto the filter.",
            "Read both volumes again; note a rinse apart: pottle rinse ...",
        )
    if scene.lot:
        yield from _put_on(scene.lot, facts)


def _put_on(state: LotState, facts: Filter) -> Iterator[Finding]:
    volume, most = facts.volume_in, most_it_can_hold_ul(state)
    if is_well_over(volume.amount, most):
        yield needs_reason(
            "volume",
            f"{volume.written} on the filter is more than was in {state.code}: "
            f"{there_was(state, most)}.",
            "Check the volumes and whether an addition is missing; if it is so, say why "
            "with --because.",
        )
    # Where solids went in, nobody knows how much liquid there is.
    if not state.solids_mg and volume.amount * 10 < state.on_hand_then * 9:
        yield remark(
            "volume",
            f"Only {volume.written} of the {show(most, Measure.UL)} in {state.code} went onto the "
            f"filter; from now on the book takes the filtrate, {facts.volume_out.written}, for "
            "all of it.",
            "If the rest is still there, strike this and record one pass with both parts.",
        )


def outcome_was_there(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is decanted or comes out at the finish was in the batch."""
    if scene.lot is None:
        return
    match draft.facts:
        case Finish(volume=volume) if are_volumes(volume):
            yield from was_there(scene.lot, volume, "came out")
        case Decant(drawn=drawn, heel=None) if are_volumes(drawn):
            yield from was_there(scene.lot, drawn, "was drawn off")
        case Decant(drawn=drawn, heel=Quantity() as heel) if are_volumes(drawn, heel):
            total = drawn.amount + heel.amount
            both = Quantity(total, Measure.UL, f"{drawn.written} and a heel of {heel.written}")
            yield from was_there(scene.lot, both, "were drawn off and left")


def make_up_goes_up(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Making up to a volume adds; it never takes away."""
    facts = draft.facts
    if not isinstance(facts, MakeUp) or scene.lot is None:
        return
    source, there = scene.source(facts.source), scene.lot.on_hand_then
    if source and not is_liquid(source):
        yield impossible(
            "make-up",
            f"{facts.source} is not counted by volume, so nothing can be made up with it.",
            "Make up with a liquid; weigh solids in with: pottle add ...",
        )
    if not are_volumes(facts.volume, facts.used):
        return
    is_near = scene.lot.was_reckoned and not is_well_over(there, facts.volume.amount)
    if facts.volume.amount <= there and not is_near:
        holds, _ = show_apart(Measure.UL, there, facts.volume.amount)
        yield impossible(
            "make-up",
            f"{draft.lot} holds {holds} already, so it cannot be made up to "
            f"{facts.volume.written}.",
            "Measure it and give a larger volume, or record a plain addition: pottle add ...",
        )
    else:
        yield from _made_up_of(scene.lot, facts)


def _made_up_of(state: LotState, facts: MakeUp) -> Iterator[Finding]:
    most = most_it_can_hold_ul(state)
    both = most + facts.used.amount
    if is_well_over(facts.volume.amount, both):
        yield impossible(
            "make-up",
            f"{facts.used.written} cannot have made {state.code} up to {facts.volume.written}: "
            f"{there_was(state, most)} before it.",
            "Check both volumes, or record what else went in first: pottle add ...",
        )
    if not state.solids_mg and both * (MIXING - 1) > facts.volume.amount * MIXING:
        yield remark(
            "make-up",
            f"{show(most, Measure.UL)} of {state.code} and {facts.used.written} make "
            f"{show(both, Measure.UL)}; mixing cannot have brought that down to "
            f"{facts.volume.written}.",
            "Check how much was used, and whether something was drawn off before.",
        )


def rinse_is_liquid(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A cake is rinsed with what is counted by volume."""
    facts = draft.facts
    source = scene.source(facts.source) if isinstance(facts, Rinse) else None
    if source and not is_liquid(source):
        yield impossible(
            "rinse",
            f"{source.code} is not counted by volume, so a cake cannot be rinsed with it.",
            "Name the liquid lot it was rinsed with.",
        )


def rinse_runs_through(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A rinse gives back what was put on, and at most what the cake had held besides."""
    facts = draft.facts
    if not isinstance(facts, Rinse) or not are_volumes(facts.volume_in, facts.volume_out):
        return
    more, held = facts.volume_out.amount - facts.volume_in.amount, _kept_back(scene.so_far(draft))
    if more > held:
        yield needs_reason(
            "rinse",
            f"{facts.volume_out.written} ran through for {facts.volume_in.written} of rinse, "
            f"but the filter had kept back no more than {show(held, Measure.UL)}.",
            "Read both volumes again; if it is so, say why with --because.",
        )
    elif more > 0:
        yield remark(
            "rinse",
            f"{facts.volume_out.written} ran through for {facts.volume_in.written} of rinse: "
            "the rest is batch liquid that the cake had held.",
        )


def _kept_back(entries: Iterable[Entry]) -> int:
    """Return what the filter holds of what went onto it, earlier rinses counted."""
    facts = (entry.facts for entry in entries)
    passes = (act for act in facts if isinstance(act, Filter | Rinse))
    return max(sum(act.volume_in.amount - act.volume_out.amount for act in passes), 0)


def fill_takes_what_it_fills(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Filled bottles hold no more than was drawn for them, from what is finished."""
    facts = draft.facts
    if not isinstance(facts, Bottle):
        return
    filled = facts.count * facts.size.amount
    if are_volumes(facts.size, facts.drawn) and filled > facts.drawn.amount:
        hold, _ = show_apart(Measure.UL, filled, facts.drawn.amount)
        yield impossible(
            "fill",
            f"{facts.count} bottles of {facts.size.written} hold {hold}, more than the "
            f"{facts.drawn.written} drawn.",
            "Read the volume drawn again, or count the bottles again.",
        )
    bulk = scene.source(facts.source)
    if bulk and bulk.opened.lot_type is LotType.MADE and not is_finished(bulk):
        yield remark(
            "fill",
            f"{bulk.code} is not finished: its yield is not in the book.",
            f"Finish it with all that came out, at a time before the filling: "
            f"pottle finish {bulk.code} VOLUME --at WHEN",
        )


def bottles_are_numbered_once(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Numbered bottles are as many as were filled."""
    facts = draft.facts
    if not isinstance(facts, Bottle) or facts.first_bottle is None or facts.last_bottle is None:
        return
    if facts.last_bottle - facts.first_bottle + 1 != facts.count:
        yield impossible(
            "fill",
            f"The numbers {facts.first_bottle} to {facts.last_bottle} are not those of "
            f"{facts.count} bottles.",
            "Give the numbers of the first and the last bottle that were filled.",
        )


RULES: tuple[Rule, ...] = (
    volumes_are_volumes,
    filtrate_was_there,
    outcome_was_there,
    make_up_goes_up,
    rinse_is_liquid,
    rinse_runs_through,
    fill_takes_what_it_fills,
    bottles_are_numbered_once,
)
