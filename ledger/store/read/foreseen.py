"""What an act nearly always asks of the book, foretold for a server.

Guarantees: only what readers ask themselves; what is not asked in the end was asked for nothing.
Refuses: to know rules; what a lot's state is made of, and what went into it, is the same for all.
"""

from collections.abc import Sequence

from ledger.domain.entries.canonical import MAX_INTEGER
from ledger.store.engine.acts import NOW
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import amounts, dates, inputs, queries, reach, received, stands, steps, walk
from ledger.store.read.end import OF_LAST, edge_of, end_of

_ID = "SELECT id FROM lot WHERE code = :code"
_SECOND = (
    f"SELECT to_char(CAST(current_setting('{NOW}') AS TIMESTAMPTZ) AT TIME ZONE 'UTC', "
    '\'YYYY-MM-DD"T"HH24:MI:SS"Z"\')'
)
# Each once, where it was first met, as the walk is read.
_MET = (
    "SELECT array_agg(lot ORDER BY first) FROM (SELECT lot, MIN(nth) AS first "
    "FROM unnest(CAST(:lots AS BIGINT[])) WITH ORDINALITY AS met(lot, nth) GROUP BY lot) AS once"
)
_MADE = (
    "SELECT array_agg(lot.id ORDER BY nth) FROM unnest(CAST(:lots AS BIGINT[])) "
    "WITH ORDINALITY AS met(number, nth) JOIN lot ON lot.id = number "
    "WHERE lot.lot_type <> 'received'"
)
_SORTED = (
    "SELECT array_agg(lot ORDER BY lot) FROM "
    "(SELECT DISTINCT lot FROM unnest(CAST(:lots AS BIGINT[])) AS met(lot)) AS once"
)
_MATERIAL = (
    "SELECT r.material FROM entry e JOIN receipt r ON r.seq = e.seq "
    "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.stands_for = :lot AND c.corrects IS NULL"
)
_FORMULA = (
    "SELECT s.formula FROM entry e JOIN start s ON s.seq = e.seq "
    "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.stands_for = :lot AND c.corrects IS NULL"
)
_LOT_OF = "SELECT lot.code FROM entry e JOIN lot ON lot.id = e.lot WHERE e.seq = :seq"


def foresee_all(foreseen: Foreseen) -> None:
    """Foretell what every act asks."""
    foreseen.asks(queries.house)
    foreseen.asks(end_of)
    foreseen.asks(edge_of, foreseen.finds("BIGINT", OF_LAST))
    foreseen.asks(queries.people)


def in_hand(foreseen: Foreseen, by: str) -> Found:
    """Foretell what is asked for the lot that somebody has in hand, and return its code."""
    last = foreseen.finds_by("BIGINT", queries.last_about_a_lot, by)
    foreseen.asks(queries.entry, last)
    return foreseen.finds("TEXT", _LOT_OF, seq=last)


def second(foreseen: Foreseen) -> Found:
    """Return the second in which a writer's turn began, by the server's clock."""
    return foreseen.finds("TEXT", _SECOND)


def foresee_lot(
    foreseen: Foreseen, code: str | Found, sources: Sequence[str], at: str | Found | None
) -> None:
    """Foretell what an act asks of the lot that it is about.

    Args:
        foreseen: Hears it.
        code: The lot's whole code.
        sources: The whole codes of the lots that it draws on.
        at: When it happened, as an instant; None: that is not known yet.
    """
    lot = _state(foreseen, code)
    if at is not None:
        cells = {"lot": lot, "skip": 0, "at": at, "number": MAX_INTEGER}
        foreseen.asks_for(amounts.HELD_THEN_AND_NOW, **cells)
    foreseen.asks(queries.formulas, foreseen.finds("TEXT", _FORMULA, lot=lot))
    foreseen.asks(inputs.numbers_into, lot)
    into = foreseen.finds("BIGINT[]", inputs.INTO_AND, lot=lot, skip=0, codes=list(sources))
    foreseen.asks(inputs.inputs, into)
    foreseen.asks(stands.stands, into)
    foreseen.asks(inputs.makers_of)
    foreseen.asks(inputs.vessel_sizes)


def foresee_source(foreseen: Foreseen, code: str) -> None:
    """Foretell what an act asks of a lot that it draws on, by its whole code."""
    lot = _state(foreseen, code)
    foreseen.asks(amounts.held, lot)


def _state(foreseen: Foreseen, code: str | Found) -> Found:
    """Foretell what is asked of any lot, and return its number."""
    foreseen.asks(queries.lot_by_code, code)
    lot = foreseen.finds("BIGINT", _ID, code=code)
    foreseen.asks(queries.entries_of_lot, lot)
    foreseen.asks(queries.material, foreseen.finds("TEXT", _MATERIAL, lot=lot))
    foreseen.asks(walk.behind, lot)
    met = foreseen.finds("BIGINT[]", _MET, lots=foreseen.finds_by("BIGINT[]", walk.back, lot))
    foreseen.asks(steps.steps_of, met)
    foreseen.asks(steps.step_rows, foreseen.finds("BIGINT[]", _MADE, lots=met))
    foreseen.asks(received.received, met)
    foreseen.asks(reach.made_of, [lot])
    foreseen.asks(dates.rows_of, foreseen.finds("BIGINT[]", _SORTED, lots=met))
    return lot
