"""Clean: a vessel was cleaned, how, and what it last held.

Guarantees: it is of a vessel and of no lot; what the vessel last held is kept as it was told.
"""

from ledger.domain.entries import Clean
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded


@act
def clean(
    book: Book, how: How, *, vessel: str, method: str, last_held: str | None = None
) -> Recorded:
    """Record that a vessel was cleaned."""
    with at_desk(book, how) as desk:
        read = desk.words
        facts = Clean(
            vessel=read.text(vessel, "vessel"),
            how=read.text(method, "way of cleaning"),
            last_held=read.text_or_none(last_held, "last contents"),
        )
        return desk.record(facts)
