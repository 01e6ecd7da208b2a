"""Decant: the clear liquid is drawn off its sediment.

Guarantees: what was drawn is the batch from then on; a heel is told only if somebody measured it.
"""

from ledger.domain.entries import Decant
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def decant(book: Book, how: How, *, lot: str, drawn: str, heel: str | None = None) -> Recorded:
    """Draw the clear liquid off its sediment."""
    with at_desk(book, how, Ahead(lot)) as desk:
        words = desk.words
        facts = Decant(drawn=words.amount(drawn), heel=words.amount_or_none(heel))
        return desk.record(facts, words.lot(lot))
