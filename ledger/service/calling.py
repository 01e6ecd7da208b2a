"""Calls to those who hold goods of a recalled lot, and the end of a recall.

Guarantees: every call is an entry of the lot, however it ended. Refuses: nothing beyond the rules.
"""

from ledger.domain.entries import Closing, Contact
from ledger.domain.entries.words import Reached
from ledger.service.book import Book, How, Recorded
from ledger.service.desk import at_desk


def contact(
    book: Book,
    how: How,
    *,
    lot: str,
    party: str,
    reached: str,
    still_there: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record that somebody who holds goods of a lot was called."""
    with at_desk(book, how) as desk:
        read = desk.words
        facts = Contact(
            party=read.text(party, "name of who was called"),
            reached=read.needed(reached, Reached, "end of the call"),
            still_there=read.pieces(still_there) if still_there else None,
            words=read.text_or_none(words, "words"),
        )
        return desk.record(facts, read.lot(lot))


def close(book: Book, how: How, *, lot: str, cause: str) -> Recorded:
    """Close the recall of a lot with its cause."""
    with at_desk(book, how) as desk:
        return desk.record(Closing(desk.words.text(cause, "cause")), desk.words.lot(lot))
