"""Rinse: the cake is rinsed; kept apart, the liquor is a lot of its own.

Guarantees: a rinse opens a lot, counted by volume, only where its liquor is kept apart.
"""

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Rinse
from ledger.domain.entries.choices import LotType, RinseTo
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead

LIQUOR = "Rinse liquor"
"""What is kept apart, as its code tells."""


@act
def rinse(
    book: Book,
    how: How,
    *,
    lot: str,
    source: str,
    volume_in: str,
    volume_out: str,
    went_to: str,
    code: str | None = None,
) -> Recorded:
    """Rinse the cake; kept apart, the rinse liquor opens a lot of its own."""
    opens = LIQUOR if went_to == RinseTo.APART else None
    with at_desk(book, how, Ahead(lot, (source,), opens=opens)) as desk:
        words = desk.words
        to = words.needed(went_to, RinseTo, "place where the rinse went")
        facts = Rinse(
            source=words.source(source),
            volume_in=words.amount(volume_in),
            volume_out=words.amount(volume_out),
            went_to=to,
        )
        rinsed = words.lot(lot)
        if to is not RinseTo.APART:
            return desk.record(facts, rinsed)
        apart = desk.open_code(code, LIQUOR)
        return desk.record(facts, rinsed, opens=(apart, LotType.RINSE, Measure.UL))
