"""The usual slips of handling, remarked on: powder and water, warm filters, uncleaned vessels.

Guarantees: each remark says what it may lead to, and looks at the batch as it was when the act
happened.
"""

from collections.abc import Iterator
from datetime import timedelta

from ledger.domain.amounts.quantity import Measure, reckoned, show
from ledger.domain.entries import Add, Draft, Facts, Filter, MakeUp, Move, Rest, Rinse, Start
from ledger.domain.entries.choices import (
    AddedAs,
    Cake,
    MaterialKind,
    Medium,
    MoveAs,
    ProductKind,
    RestFor,
)
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import latest, name
from ledger.domain.rules.always.volumes import is_well_over
from ledger.domain.rules.figures import degrees
from ledger.domain.rules.finding import THIS_ENTRY, Finding, Rule, asks, remark

WARMER_MDEGC = 5_000
"""How much a liquid may warm on the way to the filter (common practice, no source)."""


AGAIN_WITHIN = timedelta(minutes=4)
"""How soon after an addition the same one looks like a command given twice (common practice, no
source)."""


def added_once(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The same of the same lot within minutes is asked about: a command is easily given twice."""
    facts = draft.facts
    if not isinstance(facts, Add) or draft.corrects is not None:
        return
    went_in = _what_went_in(facts)
    # Those told with a later moment too: the second time may be told as the earlier.
    for entry in scene.lot.entries if scene.lot else ():
        since = draft.happened.at - entry.draft.happened.at
        if abs(since) <= AGAIN_WITHIN and _what_went_in(entry.draft.facts) == went_in:
            yield asks(
                "added twice",
                f"{facts.amount.written} of {_named(facts.source, scene)} went into {draft.lot} "
                f"{_ago(since)}, in entry {entry.seq}.",
                "If the command was given twice, leave it; if as much went in again, say so with "
                "--because.",
            )


def _named(code: str, scene: Scene) -> str:
    source = scene.source(code)
    return f"{name(source)}, {code}," if source else code


def _what_went_in(facts: Facts) -> tuple[str, Measure, int, AddedAs] | None:
    if not isinstance(facts, Add):
        return None
    # Not as it was written: 0.5 L is as much as 500 mL.
    return facts.source, facts.amount.measure, facts.amount.amount, facts.added_as


def _ago(since: timedelta) -> str:
    minutes = round(since.total_seconds() / 60)
    if not minutes:
        return "just before"
    return f"{minutes} min before" if minutes > 0 else f"{-minutes} min after"


def no_water_on_carbonate(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Water on a clarifier turns alkaline and dulls the flavour."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Add | MakeUp | Rinse):
        return
    waters = {i.code for i in scene.control.inputs if i.sort is MaterialKind.WATER}
    if facts.source not in waters or not _on_powder(draft, scene):
        return
    yield remark(
        "water on carbonate",
        f"{facts.source} is water, and there is clarifier in {lot.code} or in its cake: watery "
        "liquid takes up some of it, turns alkaline and may throw a haze.",
        "Rinse with the spirit that the batch is made of; look at a diluted sample.",
    )


def _on_powder(draft: Draft, scene: Scene) -> bool:
    sorts = {lot.code: lot.sort for lot in scene.control.inputs}
    is_there = False
    for entry in scene.so_far(draft):
        match entry.facts:
            case Add(source=source) if sorts.get(source) is MaterialKind.CLARIFIER:
                is_there = True
            # A filter takes the powder out of the liquid, but a rinse runs through it.
            case Filter() if not isinstance(draft.facts, Rinse):
                is_there = False
            case _:
                pass
    return is_there


def filtered_cold(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was chilled is filtered before it warms."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Filter) or facts.temp_mdegc is None:
        return
    chilled: int | None = None
    for entry in scene.so_far(draft):
        match entry.facts:
            case Rest(purpose=RestFor.CHILL, temp_mdegc=int(temp)):
                chilled = temp
            case Filter():
                chilled = None
            case _:
                pass
    if chilled is not None and facts.temp_mdegc > chilled + WARMER_MDEGC:
        yield remark(
            "warmed",
            f"{lot.code} was chilled at {degrees(chilled)} and filtered at "
            f"{degrees(facts.temp_mdegc)}: what the cold threw may have dissolved again.",
            "Look at it cold before it leaves.",
        )


def first_runnings_go_back(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """The first runnings of a fresh cake carry fines."""
    facts = draft.facts
    if not isinstance(facts, Filter) or facts.pass_no != 1 or facts.first_runnings:
        return
    if facts.cake is Cake.SAME or facts.cake_of:
        return
    yield remark(
        "first runnings",
        "No first runnings were returned on the first pass: they carry fines and fibres.",
        "Return them until they run bright, and say how much with --first-runnings.",
    )


def medium_is_said(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """What a pass ran through is known, or is said to be unknown."""
    facts = draft.facts
    if isinstance(facts, Filter) and facts.medium == Medium.UNSAID:
        yield remark(
            "medium",
            "What it ran through is not said, so no cause of haze can be sought in it.",
            f'Say it with: pottle correct {THIS_ENTRY} --set medium=paper --because "left unsaid"',
        )


def vessel_is_clean(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A vessel that held another flavour is cleaned before it is used again."""
    facts, held = draft.facts, scene.control.last_held
    if held is None or not isinstance(facts, Start | Rest):
        return
    start = facts if isinstance(facts, Start) else latest(scene.lot, Start) if scene.lot else None
    if start is None or held.lot == draft.lot or held.product_kind is ProductKind.BASE_SYRUP:
        return
    if held.product != start.product:
        yield remark(
            "vessel",
            f"{held.vessel} last held {held.product} ({held.lot}) and no cleaning of it is in the "
            "book since.",
            f'If it was cleaned: pottle clean "{held.vessel}" --how HOW --at WHEN',
        )


def vessel_is_large_enough(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No vessel holds more than it is said to hold."""
    vessel = scene.control.vessel
    if vessel and is_well_over(vessel.would_hold_ul, vessel.holds_ul):
        yield remark(
            "vessel",
            f"With this about {show(reckoned(vessel.would_hold_ul), Measure.UL)} are in "
            f"{draft.lot}, more than the {show(vessel.holds_ul, Measure.UL)} that {vessel.name} "
            "holds.",
            "Check the amounts; where it stands in another vessel, say so with its next rest: "
            f"pottle rest {draft.lot} --vessel NAME",
        )


def destruction_is_seen(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Somebody sees what is destroyed (common practice, no source)."""
    facts = draft.facts
    if isinstance(facts, Move) and facts.moved_as is MoveAs.DESTROYED and not facts.witness:
        yield remark(
            "witness",
            f"Nobody is named who saw {facts.amount.written} of {draft.lot} destroyed.",
            "Say who did with --witness.",
        )


RULES: tuple[Rule, ...] = (
    no_water_on_carbonate,
    filtered_cold,
    first_runnings_go_back,
    medium_is_said,
    vessel_is_clean,
    vessel_is_large_enough,
    destruction_is_seen,
    added_once,
)
