"""The dates of lots, reckoned when they are asked for.

Guarantees: a date follows from what is in force; a correction of a receipt or a finish moves it.
Refuses: to keep a date that was reckoned.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from ledger.domain.lots.dates import Dates, dates
from ledger.domain.lots.lot import Lot
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.dates import dated


def dates_of(connection: Connection, lots: Iterable[int]) -> dict[int, Dates]:
    """Return the dates of lots by their numbers."""
    known = dated(connection, lots)
    named = {lot.formula for lots_behind in known.values() for lot in lots_behind if lot.formula}
    formulas = {
        (formula.code, formula.version): formula
        for code in sorted({code for code, _ in named})
        for formula in queries.formulas(connection, code)
    }
    return {number: dates(own, behind, formulas) for number, (own, *behind) in known.items()}


def with_dates(connection: Connection, lots: dict[int, Lot]) -> dict[int, Lot]:
    """Return lots by their numbers, each with the date that is reckoned for it."""
    known = dates_of(connection, lots)
    return {
        number: replace(lot, best_before=known[number].best_before) for number, lot in lots.items()
    }
