"""Bottle: a lot is filled into bottles.

Guarantees: bottled goods are a lot of their own, counted by the bottle.
"""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Bottle
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import name
from ledger.service.account.codes import left_to_fill
from ledger.service.account.state import lot_state
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
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
    with at_desk(book, how, Ahead(sources=(bottles, caps), fills=source)) as desk:
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
        done = desk.record(facts, opens=(packed, LotType.PACKED, Measure.UEACH))
        left = left_to_fill(desk.connection, facts)
        return replace(done, remarks=(*done.remarks, _in_hand(left, packed))) if left else done


def _in_hand(bulk: Lot, packed: str) -> tuple[str, str]:
    return (
        f"{show(bulk.on_hand, bulk.measure)} of {bulk.code} are left to fill, so a dot goes on "
        "standing for it.",
        f"Name the bottles by their code, {packed}.",
    )
