"""Stock by date, what is low, and what is left of its cost.

Guarantees: reads only; the value of a received lot is the share of its cost that is left, rounded
half to even to the smallest coin. Refuses: a value for lots of which no cost is in the book.
"""

from fractions import Fraction

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Material, Receipt
from ledger.domain.lots.lot import Lot, Status, by_date
from ledger.service.account.dates import with_dates
from ledger.service.desk.book import Book
from ledger.service.masters.material import materials
from ledger.store.read import queries
from ledger.store.read.lots import all_lots, lots_by_number, lots_on_hand

UNUSABLE = frozenset({Status.STRUCK, Status.REJECTED, Status.RECALLED})
"""Where a lot stands that is not counted as stock of its material."""


class Low(Struct, frozen=True):
    """A material of which little is there."""

    material: Material
    """The material."""
    on_hand: int
    """What is there of it in all lots of one measure."""
    measure: Measure
    """That measure."""


def first_expired(lots: tuple[Lot, ...]) -> tuple[Lot, ...]:
    """Return lots with the earliest date first, then the one that came first."""
    return tuple(sorted(lots, key=by_date))


def low_materials(book: Book, threshold: int, measure: Measure) -> tuple[Low, ...]:
    """Return the materials of which less is there than a threshold, the least first.

    A material that was never received is none; one of which all lots are used up is there with
    nothing.
    """
    totals: dict[str, int] = {}
    for lot in stock(book, everything=True):
        if lot.material and lot.measure is measure and lot.status is not Status.STRUCK:
            there = 0 if lot.status in UNUSABLE else max(lot.on_hand, 0)
            totals[lot.material] = totals.get(lot.material, 0) + there
    known = {material.code: material for material in materials(book)}
    there_is = [Low(known[code], total, measure) for code, total in totals.items()]
    lows = (low for low in there_is if low.on_hand < threshold)
    return tuple(sorted(lows, key=lambda low: (low.on_hand, low.material.code)))


def values_left(book: Book, lots: tuple[Lot, ...]) -> dict[int, int]:
    """Return what is left of the cost of received lots, in the smallest coin, by lot number."""
    with book.reading() as connection:
        receipts = {
            entry.stands_for: entry.facts for entry in queries.entries_of_kind(connection, Receipt)
        }
    values = {}
    for lot in lots:
        receipt = receipts.get(lot.seq)
        if isinstance(receipt, Receipt) and receipt.cost_minor is not None:
            share = Fraction(max(lot.on_hand, 0), receipt.amount.amount)
            values[lot.seq] = round(receipt.cost_minor * share)
    return values


def stock(book: Book, *, everything: bool = False) -> tuple[Lot, ...]:
    """Return the lots that are on hand, or all, in the order they were opened, with their dates."""
    with book.reading() as connection:
        wanted = all_lots(connection) if everything else lots_on_hand(connection)
        return tuple(with_dates(connection, lots_by_number(connection, wanted)).values())
