"""Making: volumes of a batch, before and after each act.

Guarantees: a filtrate is never more than what was filtered, and nothing comes out that did not go
in. Refuses: weights where a volume is meant.
"""

from collections.abc import Iterator

from ledger.domain.entries import Bottle, Decant, Draft, Filter, Finish, MakeUp, Rinse, Start
from ledger.domain.fields import specs
from ledger.domain.lots import LotState, most_it_can_hold_ul
from ledger.domain.quantity import Measure, Quantity, show
from ledger.domain.rules.finding import Finding, Rule, impossible, needs_reason, remark
from ledger.domain.scene import Scene


def volumes_are_volumes(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Bench volumes are given by volume."""
    facts = draft.facts
    if not isinstance(facts, Start | Filter | Rinse | Decant | MakeUp | Finish | Bottle):
        return
    for spec in specs(type(facts)):
        value = getattr(facts, spec.name)
        wanted = Measure.MG if spec.name == "precoat" else Measure.UL
        if isinstance(value, Quantity) and value.measure is not wanted:
            kind = "a weight" if wanted is Measure.MG else "a volume"
            yield impossible(
                "volume",
                f"{value.written} is not {kind}, but {spec.name.replace('_', ' ')} is one.",
                f"Give {kind}, such as {'15 g' if wanted is Measure.MG else '430 mL'}.",
            )


def filtrate_was_there(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A filtrate is at most what was put on the filter, which is at most what was there."""
    facts = draft.facts
    if not isinstance(facts, Filter):
        return
    if facts.volume_out.amount > facts.volume_in.amount:
        yield impossible(
            "filtrate",
            f"{facts.volume_out.written} of filtrate is more than the "
            f"{show(facts.volume_in.amount, Measure.UL)} that went onto the filter.",
            "Read both volumes again; note a rinse apart: pottle rinse ...",
        )
    if scene.lot:
        yield from _was_there(scene.lot, facts.volume_out, "came through the filter")
        yield from _put_on(scene.lot, facts.volume_in)


def _put_on(state: LotState, volume: Quantity) -> Iterator[Finding]:
    most = most_it_can_hold_ul(state)
    if volume.amount > most:
        yield needs_reason(
            "volume",
            f"{volume.written} on the filter is more than was in {state.code}: "
            f"{_there(state, most)}.",
            "Check the volumes and whether an addition is missing; if it is so, say why "
            "with --because.",
        )


def _was_there(state: LotState, volume: Quantity, did: str) -> Iterator[Finding]:
    most = most_it_can_hold_ul(state)
    if volume.amount > most:
        yield impossible(
            "volume",
            f"{volume.written} {did}, but {state.code} held less: {_there(state, most)}.",
            "Record what else went in first: pottle add ...",
        )


def _there(state: LotState, most: int) -> str:
    if not state.solids_mg:
        return f"the book says {show(most, Measure.UL)}"
    return (
        f"{show(state.on_hand_then, Measure.UL)} of liquid and "
        f"{show(state.solids_mg, Measure.MG)} of solids make at most {show(most, Measure.UL)}"
    )


def outcome_was_there(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is decanted or comes out at the finish was in the batch."""
    if scene.lot is None:
        return
    match draft.facts:
        case Finish(volume=volume):
            yield from _was_there(scene.lot, volume, "came out")
        case Decant(drawn=drawn, heel=heel):
            total = drawn.amount + (heel.amount if heel else 0)
            both = Quantity(total, Measure.UL, show(total, Measure.UL))
            yield from _was_there(scene.lot, both, "was drawn off and left")


def make_up_goes_up(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Making up to a volume adds; it never takes away."""
    facts = draft.facts
    if not isinstance(facts, MakeUp) or scene.lot is None:
        return
    there = scene.lot.on_hand_then
    if facts.volume.amount <= there:
        yield impossible(
            "make-up",
            f"{draft.lot} holds {show(there, Measure.UL)} already, so it cannot be made up "
            f"to {facts.volume.written}.",
            "Measure it and give a larger volume, or record a plain addition: pottle add ...",
        )
    source = scene.source(facts.source)
    if source and source.measure is not Measure.UL:
        yield impossible(
            "make-up",
            f"{facts.source} is not counted by volume, so nothing can be made up with it.",
            "Make up with a liquid; weigh solids in with: pottle add ...",
        )


def rinse_runs_through(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A rinse gives back at most what was put on and what the cake may have held."""
    facts = draft.facts
    if not isinstance(facts, Rinse):
        return
    source = scene.source(facts.source)
    if source and source.measure is not Measure.UL:
        yield impossible(
            "rinse",
            f"{facts.source} is not counted by volume, so a cake cannot be rinsed with it.",
            "Name the liquid lot it was rinsed with.",
        )
    if facts.volume_out.amount > facts.volume_in.amount:
        yield remark(
            "rinse",
            f"{facts.volume_out.written} ran through for {facts.volume_in.written} of rinse: "
            "the rest is batch liquid that the cake had held.",
        )


def fill_takes_what_it_fills(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Filled bottles hold no more than was drawn for them."""
    facts = draft.facts
    if not isinstance(facts, Bottle):
        return
    filled = facts.count * facts.size.amount
    if filled > facts.drawn.amount:
        yield impossible(
            "fill",
            f"{facts.count} bottles of {facts.size.written} hold {show(filled, Measure.UL)}, "
            f"more than the {facts.drawn.written} drawn.",
            "Read the volume drawn again, or count the bottles again.",
        )


RULES: tuple[Rule, ...] = (
    volumes_are_volumes,
    filtrate_was_there,
    outcome_was_there,
    make_up_goes_up,
    rinse_runs_through,
    fill_takes_what_it_fills,
)
