"""Telling what fits no longer once an entry is corrected or struck.

Guarantees: the lots that the old entry and the new one touch are walked through before and after,
in the transaction of the correction. Refuses: to stand in its way.
"""

from collections.abc import Iterable

from ledger.domain.entries import Entry
from ledger.domain.rules.recheck import History, broken
from ledger.store.engine.connections import Connection
from ledger.store.read import dependents, queries

MEND = "If that entry is wrong too, correct it; else this one may be: pottle journal shows both."


def histories(connection: Connection, codes: Iterable[str]) -> dict[str, History]:
    """Return, as they are now, the histories of lots by their codes."""
    rows = ((code, queries.lot_by_code(connection, code)) for code in codes)
    return {
        code: History(row.opened, row.seq, dependents.entries_touching(connection, row.seq))
        for code, row in rows
        if row
    }


def fits_no_longer(
    connection: Connection, before: dict[str, History], new: Entry
) -> tuple[tuple[str, str], ...]:
    """Return what the correction `new` broke in the lots of `before`, each with what to do."""
    after = histories(connection, before)
    return tuple((what, MEND) for what in broken(before, after, new.stands_for))
