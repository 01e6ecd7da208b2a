"""Finish: the making of a batch ends with the volume that came out.

Guarantees: the volume is what the batch holds from then on; what was spilt and the work it took
are told apart.
"""

from ledger.domain.entries import Finish
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def finish(
    book: Book,
    how: How,
    *,
    lot: str,
    volume: str,
    temp: str | None = None,
    waste: str | None = None,
    labour: str | None = None,
) -> Recorded:
    """End the making of a batch with the volume that came out."""
    with at_desk(book, how, Ahead(lot)) as desk:
        facts = Finish(
            volume=desk.words.amount(volume),
            temp_mdegc=desk.words.scaled(temp, 1000, "°C", "temperature"),
            waste=desk.words.amount_or_none(waste),
            labour_minutes=desk.words.minutes(labour),
        )
        return desk.record(facts, desk.words.lot(lot))
