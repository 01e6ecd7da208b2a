"""Equipment: an instrument or vessel was taken into use, checked or set.

Guarantees: it is of the house and of no lot.
"""

from ledger.domain.entries import Equipment
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded


def equipment(book: Book, how: How, *, name: str, words: str) -> Recorded:
    """Record that an instrument or vessel was taken into use, checked or set."""
    with at_desk(book, how) as desk:
        read = desk.words
        return desk.record(Equipment(read.text(name, "name"), read.text(words, "finding")))
