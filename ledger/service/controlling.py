"""Gathering what a lot is held to, for the rules.

Guarantees: reads only what the draft's rules ask for. Refuses: to judge.
"""

from ledger.domain.control import Control
from ledger.domain.entries import Draft, Formula, Rest, Start
from ledger.domain.lots import LotState, latest
from ledger.store import inputs, queries
from ledger.store.engine import Connection


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
    if start is None:
        return Control()
    formula = formula_of(connection, start)
    into = inputs.numbers_into(connection, (lot.bulk or lot).seq, skip) if lot else []
    numbers = list(dict.fromkeys([*into, *(state.seq for state in sources)]))
    vessel = facts.vessel if isinstance(facts, Start | Rest) else None
    return Control(
        formula=formula,
        is_withdrawn=formula is not None
        and (formula.code, formula.version) in queries.withdrawn(connection),
        inputs=inputs.inputs(connection, numbers),
        last_held=inputs.last_held(connection, vessel, draft.happened.at, skip) if vessel else None,
    )


def formula_of(connection: Connection, start: Start) -> Formula | None:
    """Return the version of a formula that a batch follows, or None."""
    if start.formula is None:
        return None
    versions = queries.formulas(connection, start.formula)
    return next((item for item in versions if item.version == start.formula_version), None)


def _start_of(lot: LotState | None) -> Start | None:
    return latest(lot.bulk or lot, Start) if lot else None
