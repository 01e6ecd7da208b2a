"""Gathering what the rules need to know around a draft.

Guarantees: all of it is read in the transaction that will append the draft.
"""

from datetime import datetime

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Draft,
    Formula,
    Judge,
    Labels,
    MakeUp,
    Material,
    Move,
    Receipt,
    Rinse,
    Strike,
)
from ledger.domain.entries.choices import LotType, Verdict
from ledger.domain.entries.fields import specs
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState
from ledger.domain.masters.parties import NOBODY_IN_PARTICULAR
from ledger.domain.masters.substances import NO_CONCERNS, Concerns
from ledger.domain.rules.always.names import material_names
from ledger.domain.rules.always.parties import party_of
from ledger.service.account.density import with_density
from ledger.service.account.state import lot_state
from ledger.service.desk.control import control_of
from ledger.service.desk.vessel import vessel_of
from ledger.store.engine.connections import Connection
from ledger.store.read import parties, queries
from ledger.store.read.end import last_recorded
from ledger.store.read.queries import Moment


def build_scene(connection: Connection, draft: Draft, now: datetime) -> Scene:
    """Return the scene around a draft."""
    corrected = queries.entry(connection, draft.corrects) if draft.corrects else None
    skip = corrected.stands_for if corrected else 0
    moment = Moment(draft.happened.at, skip) if skip else Moment(draft.happened.at)
    lot = _lot_of(connection, draft, moment, skip)
    # As they are now: what is drawn late finds what others have left.
    about = draft.facts.about if isinstance(draft.facts, Check) else None
    checked = queries.entry(connection, about) if about else None
    sources = tuple(_source(connection, draft, code, skip) for code in source_codes(draft))
    last_at = last_recorded(connection)
    new_name = _new_name(connection, draft)
    scene = Scene(
        now=now,
        last_recorded=last_at,
        # The first entry is the house's, which the spine itself sees to.
        has_house=last_at is not None,
        people=queries.people(connection),
        materials=_known_materials(connection, draft),
        formulas=_versions(connection, draft),
        near_names=_near_names(connection, new_name),
        brings_name=new_name is not None,
        lot=lot,
        sources=sources,
        made_from_lot=_made_from(lot, sources),
        corrected=corrected,
        corrected_is_in_force=not (
            draft.corrects and queries.corrected_by(connection, draft.corrects)
        ),
        checked=checked,
        checked_is_in_force=not (checked and queries.corrected_by(connection, checked.seq)),
        uses_of_opened=_uses(connection, draft, skip),
        concerns=_concerns(connection, draft, lot),
        control=control_of(connection, draft, lot, sources, skip),
    )
    vessel = vessel_of(connection, draft, scene)
    return replace(scene, control=replace(scene.control, vessel=vessel)) if vessel else scene


def _lot_of(connection: Connection, draft: Draft, moment: Moment, skip: int) -> LotState | None:
    """Return the lot of a draft as it was at a moment; None for one that the draft opens."""
    if draft.lot is None or (draft.opens and draft.opens.code == draft.lot):
        return None
    return lot_state(connection, draft.lot, moment, skip, _looks_through(draft))


def _source(connection: Connection, draft: Draft, code: str, skip: int) -> LotState:
    """Return a lot that a draft draws on, with what it weighs where volume and weight meet."""
    state = lot_state(connection, code, None, skip)
    match draft.facts:
        case Add(amount=amount):
            return with_density(connection, state, amount.measure)
        case MakeUp(source=source) | Rinse(source=source) | Bottle(source=source):
            return with_density(connection, state, Measure.UL) if code == source else state
        case _:
            return state


def _known_materials(connection: Connection, draft: Draft) -> frozenset[str]:
    named = material_names(draft)
    return frozenset(code for code in named if queries.material(connection, code))


def _new_name(connection: Connection, draft: Draft) -> str | None:
    """Return the name of a party which a draft brings into the book."""
    name = party_of(draft)
    if not name or name in NOBODY_IN_PARTICULAR or parties.is_known(connection, name):
        return None
    return name


def _near_names(connection: Connection, name: str | None) -> tuple[str, ...]:
    """Return the names in the book that are nearly one which is brought into it."""
    near = parties.near(connection, name) if name else ()
    return tuple(other for other in near if parties.is_known(connection, other))


def _versions(connection: Connection, draft: Draft) -> frozenset[tuple[str, int]]:
    """Return the versions that the book has of a formula that is loaded."""
    if not isinstance(draft.facts, Formula):
        return frozenset()
    known = queries.formulas(connection, draft.facts.code)
    return frozenset((formula.code, formula.version) for formula in known)


def _undeclared(connection: Connection, draft: Draft, lot: LotState | None) -> Concerns:
    """Return of which materials of bottles that are released a label lacks facts."""
    is_release = isinstance(draft.facts, Judge) and draft.facts.verdict is Verdict.RELEASE
    if not is_release or lot is None or lot.opened.lot_type is not LotType.PACKED:
        return NO_CONCERNS
    from ledger.service.account.undeclared import undeclared  # for this alone

    return Concerns(undeclared=undeclared(connection, lot.code))


def _of_goods(connection: Connection, facts: Receipt) -> Concerns:
    """Return how goods that come in are usually handled with care."""
    from ledger.service.account.shipped import usual_caution  # for this alone

    material = queries.material(connection, facts.material)
    caution = usual_caution(material) if material else ""
    return (
        Concerns(neat=f"{material.name} neat: {caution}") if material and caution else NO_CONCERNS
    )


def _concerns(connection: Connection, draft: Draft, lot: LotState | None) -> Concerns:
    """Return what is to be said of a material's constituents, or of what a label lacks.

    Of those constituents that it had, it was said.
    """
    facts = draft.facts
    if isinstance(facts, Receipt):
        return _of_goods(connection, facts)
    if not isinstance(facts, Material):
        return _undeclared(connection, draft, lot)
    from ledger.service.account.shipped import limited_on, not_told, substances  # for this alone

    old = queries.material(connection, facts.code)
    had = {item.substance for item in old.constituents} if old else set()
    limited, known = limited_on(connection, draft.happened.local().date()), substances()
    new = [item.substance for item in facts.constituents if item.substance not in had]
    return Concerns(
        usual=not_told(facts),
        unlimited={
            name: None if known.knows(name) else known.like(name)
            for name in new
            if known.counted_as(name) not in limited
        },
    )


def source_codes(draft: Draft) -> tuple[str, ...]:
    """Return the codes of the lots that a draft's facts refer to, in order."""
    named = (
        getattr(draft.facts, spec.name)
        for spec in specs(type(draft.facts))
        if spec.refers_to == "lot"
    )
    return tuple(dict.fromkeys(code for code in named if code))


def _looks_through(draft: Draft) -> bool:
    return isinstance(draft.facts, Move | Judge | Labels)


def _made_from(lot: LotState | None, sources: tuple[LotState, ...]) -> frozenset[str]:
    if lot is None:
        return frozenset()
    return frozenset(
        state.code for state in sources if state.seq != lot.seq and lot.seq in state.made_from
    )


def _uses(connection: Connection, draft: Draft, chain: int) -> int:
    if not isinstance(draft.facts, Strike) or not chain:
        return 0
    return queries.entries_about(connection, chain)
