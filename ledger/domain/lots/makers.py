"""Who made a lot, and whether anybody else has checked it.

Guarantees: bottles were made by who made their bulk, too; a check by who did the work is none.
"""

from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Decant,
    Filter,
    Finish,
    MakeUp,
    Rest,
    Rinse,
    Start,
    entries_of,
)
from ledger.domain.lots.state import LotState

MAKING = (Start, Add, Rest, Filter, Rinse, Decant, MakeUp, Finish, Bottle)
"""Kinds of entry by which somebody had a hand in a lot."""


def makers_of(lot: LotState) -> frozenset[str]:
    """Return the initials of those who worked on a lot or on what is in its bottles."""
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    return frozenset(e.draft.by for e in entries if isinstance(e.facts, MAKING) and e.draft.by)


def is_self_released(lot: LotState, by: str | None) -> bool:
    """Return whether who releases a lot worked on it, and only its makers have checked it."""
    entries = (*(lot.bulk.entries if lot.bulk else ()), *lot.entries)
    makers = makers_of(lot)
    checkers = {entry.draft.by for entry in entries_of(entries, Check)}
    return by in makers and not checkers - makers
