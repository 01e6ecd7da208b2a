"""How lots stand, many at once: the verdicts on them, how far they are, how they looked last.

Guarantees: one statement for a chunk of lots; what is told here of a lot is what its entries in
force say one after the other, by when they happened.
"""

from collections.abc import Sequence
from typing import NamedTuple

from ledger.domain.entries.choices import Grade, Verdict
from ledger.domain.lots.lot import AT_FIRST, Stand
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_for, chunks

# `|| ''` keeps a server off the key of number and kind, which would find it the looks of all lots.
_SAID_SINCE = """
    SELECT e.lot, e.kind, j.verdict, l.grade
    FROM {wanted} w
    CROSS JOIN entry e
    LEFT JOIN entry c ON c.corrects = e.seq
    LEFT JOIN judge j ON j.seq = e.seq
    LEFT JOIN look l ON l.seq = e.seq
    LEFT JOIN rinse r ON r.seq = e.seq
    WHERE e.lot = w.lot AND c.corrects IS NULL
        AND (e.kind || '' IN ('judge', 'look', 'finish', 'add', 'makeup') OR r.went_to = 'batch')
    ORDER BY e.happened_at, e.stands_for"""


class Standing(NamedTuple):
    """How a lot stands and how it looked last."""

    stand: Stand = AT_FIRST
    """The verdict that counts, and how far its making is."""
    grade: Grade | None = None
    """The grade of the last look."""


def stands(connection: Connection, lots: Sequence[int]) -> dict[int, Standing]:
    """Return how lots stand, by their numbers; a lot of which nothing was said is left out."""
    told: dict[int, Standing] = {}
    for part in chunks(lots):
        for lot, kind, verdict, grade in ask_for(connection, _SAID_SINCE, part):
            told[lot] = _after(told.get(lot, Standing()), kind, verdict, grade)
    return told


def statuses(connection: Connection) -> dict[str, str]:
    """Return where each lot stands by the book's own view, by its code.

    The view of a book of an older form says where it stood by the rules of that form.
    """
    return dict(ask(connection, "SELECT code, status FROM lot_status ORDER BY lot"))


def _after(told: Standing, kind: str, verdict: str | None, grade: str | None) -> Standing:
    if verdict:
        return told._replace(stand=told.stand.judged(Verdict(verdict)))
    if grade:
        return told._replace(grade=Grade(grade))
    is_end = kind == "finish"
    return told._replace(stand=told.stand.finished() if is_end else told.stand.opened_again())
