"""Which lot a text means that is no whole code, foretold for a server: by an ending, or a material.

Guarantees: only what is read of it later; where it means another lot, that is asked in its time.
Refuses: to decide which lot is meant; the words are read when the look has been answered.
"""

from datetime import date

from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import queries, received
from ledger.store.read.amounts import ON_HAND

_ENDING = (
    "SELECT COALESCE((SELECT code FROM lot WHERE code = :code), "
    "(SELECT MIN(code) FROM lot WHERE code LIKE :pattern ESCAPE '\\' HAVING COUNT(*) = 1))"
)
_CAME = (
    "SELECT e.stands_for AS lot, r.best_before AS day, r.seq FROM receipt r "
    "JOIN entry e ON e.seq = r.seq LEFT JOIN entry c ON c.corrects = r.seq "
    "WHERE r.material = :material AND c.corrects IS NULL"
)
# Of those on hand the first to expire, of those without a date the first that came.
_FIRST_OF = (
    f"SELECT lot.code FROM ({_CAME}) AS came "
    f"JOIN ({ON_HAND.format(wanted=f'({_CAME})')}) AS held ON held.lot = came.lot "
    "JOIN lot ON lot.id = came.lot WHERE held.amount > 0 "
    "ORDER BY COALESCE(came.day < :today, FALSE), came.day NULLS LAST, came.seq LIMIT 1"
)


def is_short(code: str) -> bool:
    """Return whether a text is less than a code of the book's form, and so may be an ending.

    >>> is_short("SOO-001-3"), is_short("001-3"), is_short("spirit")
    (False, True, True)
    """
    return code.count("-") < 2


def foresee_ending(foreseen: Foreseen, code: str) -> Found:
    """Foretell what is asked for the lot of a code, or of its one ending, and return its code."""
    foreseen.asks(queries.lot_by_code, code)
    foreseen.asks(queries.codes_ending_in, code)
    pattern = queries.pattern_of(code)
    return foreseen.finds("TEXT", _ENDING, code=code, pattern=pattern)


def foresee_first_of(foreseen: Foreseen, material: str, today: date) -> Found:
    """Foretell what is asked for the lot of a material to take from, and return its code.

    Args:
        foreseen: Hears it.
        material: The code of the material.
        today: The day by which lots are past their dates.
    """
    foreseen.asks(received.receipts_of, material)
    receipts = foreseen.finds_all("BIGINT[]", received.receipts_of, material)
    foreseen.asks(received.days_of, receipts)
    day = today.isoformat()
    return foreseen.finds("TEXT", _FIRST_OF, material=material, today=day)
