"""Gathering what a lot is held to, for the rules.

Guarantees: reads only what the draft's rules ask for.
"""

from msgspec.structs import replace

from ledger.domain.entries import (
    Add,
    Draft,
    Finish,
    Formula,
    Judge,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
    entries_of,
)
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.readings import UNITS, Taken
from ledger.domain.lots.state import LotState, latest
from ledger.store.engine.abreast import abreast
from ledger.store.engine.connections import Connection
from ledger.store.read import inputs, queries

ABOUT_INPUTS = Add | MakeUp | Rinse | Measurement | Finish | Judge
"""Kinds of facts of which a rule asks what went into the lot."""


def control_of(
    connection: Connection,
    draft: Draft,
    lot: LotState | None,
    sources: tuple[LotState, ...],
    skip: int = 0,
) -> Control:
    """Return what the lot of a draft is held to; nothing for lots that are not made here."""
    facts = draft.facts
    start = facts if isinstance(facts, Start) else _start_of(lot)
    # A lot is barred whatever it is held to.
    if start is None or (isinstance(facts, Judge) and not _is_release(draft)):
        return Control()
    vessel = facts.vessel if isinstance(facts, Start | Rest) else None
    at = draft.happened.at
    formula, went_in, last_held = abreast(
        connection,
        lambda: formula_of(connection, start),
        lambda: _inputs(connection, draft, lot, sources, skip),
        lambda: inputs.last_held(connection, vessel, at, skip) if vessel else None,
    )
    control = Control(
        formula=formula,
        is_withdrawn=formula is not None
        and (formula.code, formula.version) in queries.withdrawn(connection),
        inputs=went_in,
        last_held=last_held,
    )
    control = _with_readings(connection, draft, lot, _with_doubt(connection, draft, start, control))
    return _for_release(connection, draft, control)


def _inputs(
    connection: Connection,
    draft: Draft,
    lot: LotState | None,
    sources: tuple[LotState, ...],
    skip: int,
) -> tuple[Input, ...]:
    """Return what went into the lot of a draft, and what it puts in, where a rule asks for it."""
    if lot is None or not isinstance(draft.facts, ABOUT_INPUTS):
        return ()
    into = inputs.numbers_into(connection, (lot.bulk or lot).seq, skip)
    return inputs.inputs(connection, sorted({*into, *(state.seq for state in sources)}))


def _with_doubt(connection: Connection, draft: Draft, start: Start, control: Control) -> Control:
    """Return the control with what makes a look that is entered doubtful."""
    if not isinstance(draft.facts, Look) or draft.lot is None:
        return control
    from ledger.service.desk.doubted import doubted, is_asked  # the sums, for this alone

    if not is_asked(draft.facts, start):
        return control
    return replace(control, doubted=doubted(connection, draft.lot, draft.facts, start))


def _with_readings(
    connection: Connection, draft: Draft, lot: LotState | None, control: Control
) -> Control:
    """Return the control with the readings that the draft enters or releases upon."""
    taken = last_readings(lot) if lot and _is_release(draft) else ()
    if lot and isinstance(draft.facts, Measurement):
        taken = (Taken(lot.code, draft.facts, draft.happened.at),)
    if not any(item.facts.what in UNITS for item in taken):
        return control
    from ledger.service.desk.claims import readings_beside  # the sums, for this alone

    return replace(control, readings=readings_beside(connection, taken))


def last_readings(lot: LotState) -> tuple[Taken, ...]:
    """Return the last reading of each kind of a lot or of what is in its bottles."""
    states = (lot, lot.bulk) if lot.bulk else (lot,)
    both = [
        (entry.position, Taken(state.code, entry.facts, entry.draft.happened.at, entry.seq))
        for state in states
        for entry in entries_of(state.entries, Measurement)
    ]
    both.sort(key=lambda pair: pair[0])
    return tuple({taken.facts.what: taken for _, taken in both}.values())


def _for_release(connection: Connection, draft: Draft, control: Control) -> Control:
    formula = control.formula
    if formula is None or draft.lot is None or not _is_release(draft):
        return control
    from ledger.service.desk.claims import (  # the sums, for this alone
        claimed_limit,
        strength_as_made,
    )

    return replace(
        control,
        strength_mpct=strength_as_made(connection, draft.lot, formula),
        claim=claimed_limit(connection, formula, draft.happened.local().date()),
    )


def _is_release(draft: Draft) -> bool:
    return isinstance(draft.facts, Judge) and draft.facts.verdict is Verdict.RELEASE


def formula_of(connection: Connection, start: Start) -> Formula | None:
    """Return the version of a formula that a batch follows, or None."""
    if start.formula is None:
        return None
    versions = queries.formulas(connection, start.formula)
    return next((formula for formula in versions if formula.version == start.formula_version), None)


def _start_of(lot: LotState | None) -> Start | None:
    return latest(lot.bulk or lot, Start) if lot else None
