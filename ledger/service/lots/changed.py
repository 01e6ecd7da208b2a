"""What a release stands on and what of it was changed since.

Guarantees: only the last release that still counts is told of, and only entries of the lot itself
or of what it is made of, of kinds that a release is decided by. Refuses: to end the release; that
is for a person to decide.
"""

from ledger.domain.entries import (
    FACTS,
    Add,
    Bottle,
    Decant,
    Filter,
    Finish,
    Judge,
    Look,
    MakeUp,
    Measurement,
    Receipt,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.state import LotState
from ledger.store.engine.connections import Connection
from ledger.store.read.dependents import Changed, changed_since

DECIDES = (
    Add, Bottle, Decant, Filter, Finish, Look, MakeUp, Measurement, Receipt, Rest, Rinse, Start,
)  # fmt: skip
"""Kinds of facts by which a release is decided."""


def changed_since_release(connection: Connection, state: LotState) -> tuple[Changed, ...]:
    """Return what was corrected or struck since a lot was released; none where it is not."""
    verdicts = [entry for entry in state.entries if isinstance(entry.facts, Judge)]
    last = verdicts[-1] if verdicts else None
    if last is None or not isinstance(last.facts, Judge):
        return ()
    if last.facts.verdict is not Verdict.RELEASE:
        return ()
    kinds = [kind for kind, facts in FACTS.items() if issubclass(facts, DECIDES)]
    return changed_since(connection, {state.seq, *state.made_from}, last.seq, kinds)
