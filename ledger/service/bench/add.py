"""Add: some of a lot goes into a batch.

Guarantees: amounts taken are those measured.
"""

from ledger.domain.entries import Add
from ledger.domain.entries.choices import AddedAs
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def add(
    book: Book,
    how: How,
    *,
    lot: str,
    source: str,
    amount: str,
    added_as: str | None = None,
    temp: str | None = None,
    minutes: str | None = None,
    triturated: str | None = None,
    instrument: str | None = None,
) -> Recorded:
    """Put some of a lot into a batch."""
    with at_desk(book, how, Ahead(lot, (source,))) as desk:
        words = desk.words
        source_code = words.source(source)
        facts = Add(
            source=source_code,
            amount=words.amount_of(source_code, amount),
            added_as=words.needed(added_as or "ingredient", AddedAs, "way of adding"),
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            minutes=words.minutes(minutes),
            triturated_minutes=words.minutes(triturated),
            instrument=words.text_or_none(instrument, "instrument"),
        )
        return desk.record(facts, words.lot(lot))
