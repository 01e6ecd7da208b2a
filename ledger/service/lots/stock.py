"""Stock by date, what is low, and what is left of its cost.

Guarantees: reads only; a value is what is left of what was paid, rounded half to even to the
smallest coin. Refuses: a value for lots of which no cost is in the book.
"""

from msgspec import Struct

from ledger.domain.amounts.money import digits_of
from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Material
from ledger.domain.lots.lot import Lot, Status, by_date
from ledger.science.contents.cost import in_coins
from ledger.service.account.dates import with_dates
from ledger.service.account.lots import lots_by_number, lots_on_hand
from ledger.service.account.money import hour_of, reckoner
from ledger.service.desk.book import Book
from ledger.service.masters.material import materials
from ledger.store.read import queries
from ledger.store.read.lots import all_lots

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


def first_expired(found: tuple[Lot, ...]) -> tuple[Lot, ...]:
    """Return lots with the earliest date first, then the one that came first."""
    return tuple(sorted(found, key=by_date))


def low_materials(book: Book, threshold: int, measure: Measure) -> tuple[Low, ...]:
    """Return the materials of which less is there than a threshold, the least first.

    A material that was never received is none; one of which all lots are used up is there with
    nothing. Where more was drawn than came, it is less than nothing, which a count puts right.
    """
    totals: dict[str, int] = {}
    for brief in stock(book, everything=True):
        if brief.material and brief.measure is measure and brief.status is not Status.STRUCK:
            there = 0 if brief.status in UNUSABLE else brief.on_hand
            totals[brief.material] = totals.get(brief.material, 0) + there
    known = {item.code: item for item in materials(book)}
    found = [Low(known[code], total, measure) for code, total in totals.items()]
    low = (item for item in found if item.on_hand < threshold)
    return tuple(sorted(low, key=lambda item: (item.on_hand, item.material.code)))


def values_left(book: Book, lots: tuple[Lot, ...]) -> dict[int, int]:
    """Return what is left of the cost of lots, in the smallest coin, by lot number.

    Of a received lot it is the share of its cost that is left; of a batch and of goods what is in
    them, work included where the house says what an hour costs.
    """
    with book.reading() as connection:
        house = queries.house(connection)
        known = reckoner(connection, [brief.seq for brief in lots], hour_of(house))
    digits = digits_of(house.currency if house else "")
    left = {brief.seq: known.left(brief.code, brief.on_hand) for brief in lots}
    return {
        lot: sum(in_coins(found.money, digits).values())
        for lot, found in left.items()
        if found.money
    }


def stock(book: Book, *, everything: bool = False) -> tuple[Lot, ...]:
    """Return the lots that are on hand, or all, in the order they were opened, with their dates."""
    with book.reading() as connection:
        if everything:
            found = lots_by_number(connection, all_lots(connection))
        else:
            found = lots_on_hand(connection)
        return tuple(with_dates(connection, found).values())
