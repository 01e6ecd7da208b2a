"""Note: free words, about a lot or about nothing in particular.

Guarantees: it is words alone, from which nothing is reckoned.
"""

from ledger.domain.entries import Note
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def note(book: Book, how: How, *, text: str, lot: str | None = None) -> Recorded:
    """Record free words, about a lot or about nothing in particular."""
    with at_desk(book, how, Ahead(lot)) as desk:
        facts = Note(desk.words.text(text, "note"))
        return desk.record(facts, desk.words.lot_or_none(lot))
