"""Gathering what the rules need to know around a draft.

Guarantees: all of it is read in the transaction that will append the draft.
"""

from collections.abc import Sequence
from datetime import datetime
from functools import partial

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Draft,
    Entry,
    Formula,
    Judge,
    Labels,
    MakeUp,
    Material,
    Move,
    Receipt,
    Rest,
    Rinse,
    Start,
    Strike,
)
from ledger.domain.entries.choices import LotType, Verdict
from ledger.domain.entries.fields import specs
from ledger.domain.entries.plain import instant_text
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
from ledger.store.ahead.foreseen import foresee_unforeseen, foresee_vessel
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import parties, queries
from ledger.store.read.amounts import held_then_and_now
from ledger.store.read.end import last_recorded
from ledger.store.read.queries import Moment


def build_scene(connection: Connection, draft: Draft, now: datetime) -> Scene:
    """Return the scene around a draft."""
    codes = source_codes(draft)
    foresee(connection, lambda foreseen: _ahead(connection, foreseen, draft, codes))
    corrected = queries.entry(connection, draft.corrects) if draft.corrects else None
    skip = corrected.stands_for if corrected else 0
    moment = Moment(draft.happened.at, skip) if skip else Moment(draft.happened.at)
    (
        lot,
        last_at,
        people,
        materials,
        formulas,
        named,
        checked,
        is_over,
        uses,
        concerns,
        *drawn_on,
    ) = abreast(
        connection,
        lambda: _lot_of(connection, draft, moment, skip),
        lambda: last_recorded(connection),
        lambda: queries.people(connection),
        lambda: _known_materials(connection, draft),
        lambda: _versions(connection, draft),
        lambda: _named(connection, draft),
        lambda: _checked(connection, draft),
        lambda: bool(draft.corrects and queries.corrected_by(connection, draft.corrects)),
        lambda: _uses(connection, draft, skip),
        lambda: _concerns(connection, draft),
        # As they are now: what is drawn late finds what others have left.
        *(partial(_source, connection, draft, code, skip) for code in codes),
    )
    sources = tuple(drawn_on)
    scene = Scene(
        now=now,
        last_recorded=last_at,
        # The first entry is the house's, which the spine itself sees to.
        has_house=last_at is not None,
        people=people,
        materials=materials,
        formulas=formulas,
        near_names=named or (),
        brings_name=named is not None,
        lot=lot,
        sources=sources,
        made_from_lot=_made_from(lot, sources),
        corrected=corrected,
        corrected_is_in_force=not is_over,
        checked=checked[0],
        checked_is_in_force=checked[1],
        uses_of_opened=uses,
        concerns=concerns,
        control=control_of(connection, draft, lot, sources, skip),
    )
    vessel = vessel_of(connection, draft, scene)
    return replace(scene, control=replace(scene.control, vessel=vessel)) if vessel else scene


def _ahead(connection: Connection, foreseen: Foreseen, draft: Draft, codes: Sequence[str]) -> None:
    """Foretell what is asked by what a draft names."""
    if draft.corrects:
        foreseen.asks(queries.entry, draft.corrects)
        foreseen.asks(queries.corrected_by, draft.corrects)
    elif isinstance(draft.facts, Start | Rest) and draft.facts.vessel:
        foresee_vessel(foreseen, draft.facts.vessel, draft.happened.at)
    at = instant_text(draft.happened.at)
    for code in (draft.lot, *codes):
        if not code or (draft.opens and draft.opens.code == code):
            continue
        if draft.corrects or not foreseen.knows(queries.lot_by_code, code):
            foreseen.asks(queries.lot_by_code, code)
        elif row := queries.lot_by_code(connection, code):
            foresee_unforeseen(foreseen, row, codes if code == draft.lot else None, at)
            # Its time may have been told in words; by itself it is asked with what comes next.
            if code == draft.lot and foreseen.is_any and not _bars(draft):
                foreseen.asks(held_then_and_now, row.seq, Moment(draft.happened.at))


def _lot_of(connection: Connection, draft: Draft, moment: Moment, skip: int) -> LotState | None:
    """Return the lot of a draft as it was at a moment; None for one that the draft opens."""
    if draft.lot is None or (draft.opens and draft.opens.code == draft.lot):
        return None
    # Whatever is in it, and whatever it is made of, it may be barred.
    bars = _bars(draft)
    is_whole = _looks_through(draft) and not bars
    return lot_state(connection, draft.lot, moment, skip, is_whole, is_measured=not bars)


def _bars(draft: Draft) -> bool:
    """Return whether a draft holds a lot, rejects it, sends it to rework or recalls it."""
    return isinstance(draft.facts, Judge) and draft.facts.verdict is not Verdict.RELEASE


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


def _named(connection: Connection, draft: Draft) -> tuple[str, ...] | None:
    """Return the names in the book that are nearly that of a party which a draft brings into it.

    None: it brings none.
    """
    name = party_of(draft)
    if not name or name in NOBODY_IN_PARTICULAR or parties.is_known(connection, name):
        return None
    near = parties.near(connection, name)
    return tuple(other for other in near if parties.is_known(connection, other))


def _checked(connection: Connection, draft: Draft) -> tuple[Entry | None, bool]:
    """Return the entry that somebody checked, and whether it is in force, as others are not."""
    about = draft.facts.about if isinstance(draft.facts, Check) else None
    checked = queries.entry(connection, about) if about else None
    return checked, not (checked and queries.corrected_by(connection, checked.seq))


def _versions(connection: Connection, draft: Draft) -> frozenset[tuple[str, int]]:
    """Return the versions that the book has of a formula that is loaded."""
    if not isinstance(draft.facts, Formula):
        return frozenset()
    known = queries.formulas(connection, draft.facts.code)
    return frozenset((formula.code, formula.version) for formula in known)


def _undeclared(connection: Connection, draft: Draft) -> Concerns:
    """Return of which materials of bottles that are released a label lacks facts."""
    is_release = isinstance(draft.facts, Judge) and draft.facts.verdict is Verdict.RELEASE
    lot = queries.lot_by_code(connection, draft.lot) if is_release and draft.lot else None
    if lot is None or lot.opened.lot_type is not LotType.PACKED:
        return NO_CONCERNS
    from ledger.service.account.undeclared import undeclared  # for this alone

    return Concerns(undeclared=undeclared(connection, lot.opened.code))


def _of_goods(connection: Connection, facts: Receipt) -> Concerns:
    """Return how goods that come in are usually handled with care."""
    from ledger.service.account.shipped import usual_caution  # for this alone

    material = queries.material(connection, facts.material)
    caution = usual_caution(material) if material else ""
    return (
        Concerns(neat=f"{material.name} neat: {caution}") if material and caution else NO_CONCERNS
    )


def _concerns(connection: Connection, draft: Draft) -> Concerns:
    """Return what is to be said of a material's constituents, or of what a label lacks.

    Of those constituents that it had, it was said.
    """
    facts = draft.facts
    if isinstance(facts, Receipt):
        return _of_goods(connection, facts)
    if not isinstance(facts, Material):
        return _undeclared(connection, draft)
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
