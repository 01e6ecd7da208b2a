"""Genealogy: what may go into what.

Guarantees: the trace stays without circles. Refuses: a lot inside itself, additions to received
and packed lots, a code that another lot has.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Draft,
    Facts,
    Filter,
    Finish,
    Labels,
    MakeUp,
    Rest,
    Rinse,
)
from ledger.domain.entries.choices import LotType, RinseTo
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import has_before, is_finished, is_liquid, status
from ledger.domain.rules.finding import WORDS, Finding, Rule, impossible, remark


def not_inside_itself(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A lot does not contain itself, neither straight nor by way of others."""
    # Such a rinse does not go into the lot whose cake is rinsed.
    if isinstance(draft.facts, Rinse) and draft.facts.went_to is not RinseTo.BATCH:
        return
    for state in scene.sources:
        if state.code == draft.lot:
            yield impossible("circle", f"{state.code} cannot go into itself.", _instead(draft))
        elif state.code in scene.made_from_lot:
            yield impossible(
                "circle",
                f"{state.code} was made from {draft.lot}, so it cannot go into {draft.lot}: "
                "a lot would contain itself.",
                "Start a rework lot and add both to it: pottle start --kind rework ...",
            )


def _instead(draft: Draft) -> str:
    if isinstance(draft.facts, Filter):
        return "For the cake of its own last pass say --cake same; --cake-of is for another lot's."
    return "Name the lot that it really was; pottle stock lists what is on hand."


def bench_work_is_on_batches(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Bench acts are done to lots that are made here."""
    bench = Add | Rest | Filter | Rinse | Decant | MakeUp | Finish
    if scene.lot is None or not isinstance(draft.facts, bench):
        return
    lot_type = scene.lot.opened.lot_type
    if lot_type in (LotType.RECEIVED, LotType.PACKED):
        yield impossible(
            "not a batch",
            f"{draft.lot} is a {lot_type} lot; only a batch that is made here can take "
            f"the step {draft.facts.KIND}.",
            'Start a batch for it: pottle start --product "NAME" --kind KIND --target VOLUME',
        )


def rinse_has_its_lot(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Rinse liquor kept apart opens a lot, and no other rinse does."""
    facts = draft.facts
    if not isinstance(facts, Rinse) or (facts.went_to is RinseTo.APART) == bool(draft.opens):
        return
    what = "Rinse liquor that is kept apart is a lot of its own, but this entry opens none."
    if draft.opens:
        where = "to waste" if facts.went_to is RinseTo.WASTE else "into the batch"
        what = f"This rinse is the lot {draft.opens.code}, so it cannot have gone {where}."
    yield impossible("rinse", what, "Strike the entry and record the rinse anew: pottle rinse ...")


def fills_from_liquid(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Bottles are filled from a liquid, into empty bottles."""
    facts = draft.facts
    if not isinstance(facts, Bottle):
        return
    for code, wanted, use in (
        (facts.source, Measure.UL, "be filled into bottles"),
        (facts.bottles, Measure.UEACH, "be the bottles"),
        (facts.caps, Measure.UEACH, "be the closures"),
    ):
        state = scene.source(code)
        is_fit = state and (is_liquid(state) if wanted is Measure.UL else state.measure is wanted)
        if state and not is_fit:
            yield impossible(
                "filling",
                f"{code} cannot {use}: it is counted {WORDS[state.measure]}, not {WORDS[wanted]}.",
                "Name the right lot; pottle stock lists what is on hand.",
            )


def papers_and_labels_are_pieces(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What a paper or a label is taken from is counted by the piece."""
    match draft.facts:
        case Filter(paper=str(code)):
            use = "be the papers"
        case Labels(stock=str(code)):
            use = "be the labels"
        case _:
            return
    state = scene.source(code)
    if state and state.measure is not Measure.UEACH:
        yield impossible(
            "pieces",
            f"{code} cannot {use}: it is counted {WORDS[state.measure]}, not by number.",
            "Name the right lot; pottle stock lists what is on hand.",
        )


def finished_is_closed(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Work on a finished lot is remarked on."""
    facts, lot = draft.facts, scene.lot
    again = Add | Filter | Rinse | MakeUp | Decant | Finish
    if lot is None or not isinstance(facts, again) or draft.corrects is not None:
        return
    if not has_before(lot, Finish, draft.happened.at) or not is_finished(lot):
        return
    if status(lot) is Status.REWORK:
        return
    if isinstance(facts, Finish):
        yield remark(
            "finished",
            f"{draft.lot} was finished already; from now on it holds {facts.volume.written}.",
        )
        return
    was = " and released" if status(lot) is Status.RELEASED else ""
    if _goes_in(facts):
        told = f"this opens it again{', and it is released no longer' if was else ''}."
        todo = "Look at it, and finish it again"
    else:
        told, todo = "this changes what is in it.", "Finish it again"
    yield remark(
        "finished",
        f"{draft.lot} was finished{was} already; {told}",
        f"{todo} with what came out: pottle finish {draft.lot} VOLUME",
    )


def _goes_in(facts: Facts) -> bool:
    """Return whether something goes into the lot, which opens it again."""
    into = isinstance(facts, Rinse) and facts.went_to is RinseTo.BATCH
    return into or isinstance(facts, Add | MakeUp)


RULES: tuple[Rule, ...] = (
    not_inside_itself,
    bench_work_is_on_batches,
    rinse_has_its_lot,
    fills_from_liquid,
    papers_and_labels_are_pieces,
    finished_is_closed,
)
