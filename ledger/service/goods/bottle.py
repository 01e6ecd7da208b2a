"""Bottle: a lot is filled into bottles.

Guarantees: bottled goods are a lot of their own, counted by the bottle.
"""

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Bottle
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import name
from ledger.service.account.state import lot_state
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded


def bottle(
    book: Book,
    how: How,
    *,
    source: str,
    pack: str,
    drawn: str | None = None,
    bottles: str | None = None,
    caps: str | None = None,
    best_before: str | None = None,
    fill_check: str | None = None,
    labour: str | None = None,
    code: str | None = None,
) -> Recorded:
    """Fill a lot into bottles; opens a packed lot."""
    with at_desk(book, how) as desk:
        words = desk.words
        filled, bulk = words.pack(pack), words.lot(source)
        total = filled.count * filled.size.amount
        facts = Bottle(
            source=bulk,
            count=filled.count,
            size=filled.size,
            drawn=words.amount_of(bulk, drawn)
            if drawn
            else Quantity(total, Measure.UL, show(total, Measure.UL)),
            bottles=words.source_or_none(bottles),
            caps=words.source_or_none(caps),
            fill_check_mg=words.scaled(fill_check, 1000, "g", "weight of a fill"),
            best_before=words.day(best_before),
            labour_minutes=words.minutes(labour),
        )
        words.done()
        product = name(lot_state(desk.connection, bulk, is_whole=False))
        # B, so that the code of the bottles is told apart from that of what is in them.
        packed = desk.open_code(code, product, prefix="B")
        return desk.record(facts, opens=(packed, LotType.PACKED, Measure.UEACH))
