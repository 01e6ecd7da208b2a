"""Strike: an entry made by mistake is struck out; it stays readable.

Guarantees: where no time is told, it is no earlier than what it strikes.
"""

from msgspec.structs import replace

from ledger.domain.entries import Strike
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.numbers import entry_number


@act
def strike(book: Book, how: How, *, entry: str) -> Recorded:
    """Strike out an entry that was made by mistake."""
    with at_desk(book, how, Ahead(entry=entry, is_now=True)) as desk:
        old = desk.entry_named(entry)
        if old and how.at is None:
            desk.happened = replace(desk.happened, at=max(desk.happened.at, old.draft.happened.at))
        return desk.record(
            Strike(), lot=old.draft.lot if old else None, corrects=entry_number(entry)
        )
