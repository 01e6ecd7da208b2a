"""Telling what fits no longer once an entry is corrected or struck.

Guarantees: the lots that the old entry and the new one touch are walked through before and after,
in the transaction of the correction. Refuses: to stand in its way.
"""

from collections.abc import Iterable, Mapping
from functools import partial

from ledger.domain.entries import Entry
from ledger.domain.rules.recheck import History, broken
from ledger.store.engine.abreast import abreast
from ledger.store.engine.connections import Connection
from ledger.store.read import dependents, queries

MEND = "If that entry is wrong too, correct it; else this one may be: pottle journal shows both."


def histories(connection: Connection, codes: Iterable[str]) -> dict[str, History]:
    """Return, as they are now, the histories of lots by their codes."""
    wanted = list(codes)
    told = abreast(connection, *(partial(_history, connection, code) for code in wanted))
    return {code: history for code, history in zip(wanted, told, strict=True) if history}


def _history(connection: Connection, code: str) -> History | None:
    row = queries.lot_by_code(connection, code)
    if row is None:
        return None
    return History(row.opened, row.seq, dependents.entries_touching(connection, row.seq))


def fits_no_longer(
    before: Mapping[str, History], after: Mapping[str, History], new: Entry
) -> tuple[tuple[str, str], ...]:
    """Return what the correction `new` broke in lots, each with what to do."""
    return tuple((what, MEND) for what in broken(before, after, new.stands_for))
