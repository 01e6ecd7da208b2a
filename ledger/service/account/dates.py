"""The dates of lots, reckoned when they are asked for.

Guarantees: a date follows from what is in force; a correction of a receipt or a finish moves it.
Refuses: to keep a date that was reckoned.
"""

from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet

from msgspec.structs import replace

from ledger.domain.lots.dates import Dated, Dates, asks_for_a_reading, dates, lowest
from ledger.domain.lots.lot import Lot
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.dates import dated
from ledger.store.read.reach import made_of


def dates_of(connection: Connection, lots: Iterable[int]) -> dict[int, Dates]:
    """Return the dates of lots by their numbers."""
    known = dated(connection, lots)
    named = {item.formula for item in known.lots.values() if item.formula}
    formulas = {
        (formula.code, formula.version): formula
        for code in sorted({code for code, _ in named})
        for formula in queries.formulas(connection, code)
    }
    by_syrup = {
        number
        for number, item in known.lots.items()
        if item.formula in formulas and asks_for_a_reading(formulas[item.formula])
    }
    items = {**known.lots, **_by_lowest(connection, known.lots, by_syrup)}
    return {
        number: dates(items[number], (items[source] for source in behind), formulas)
        for number, behind in known.behind.items()
    }


def _by_lowest(
    connection: Connection, known: Mapping[int, Dated], lots: AbstractSet[int]
) -> dict[int, Dated]:
    """Return lots with the weakest syrup that is read of all they are made of, or reckoned."""
    if not lots:
        return {}
    from ledger.service.account.contents import base_syrups  # the sums, for this alone

    behind = made_of(connection, lots)
    reckoned = base_syrups(connection, frozenset(lots).union(*behind.values()))
    return {
        lot: replace(
            known[lot],
            brix_mpct=lowest(
                (
                    reckoned.get(known[lot].code),
                    *(known[each].brix_mpct for each in (lot, *behind[lot])),
                )
            ),
        )
        for lot in lots
    }


def with_dates(connection: Connection, lots: dict[int, Lot]) -> dict[int, Lot]:
    """Return lots by their numbers, each with the date that is reckoned for it."""
    known = dates_of(connection, lots)
    return {
        number: replace(lot, best_before=known[number].best_before) for number, lot in lots.items()
    }
