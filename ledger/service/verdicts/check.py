"""Check: a second person has looked over a lot or one entry.

Guarantees: what is told of an entry is kept with the lot that the entry is about. Refuses: a check
of a lot and of an entry at once.
"""

from ledger.domain.entries import Check
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.numbers import entry_number


@act
def check(
    book: Book,
    how: How,
    *,
    lot: str | None = None,
    entry: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record that a lot, or one entry, was checked."""
    with at_desk(book, how, Ahead(lot, is_packed=True, about=entry)) as desk:
        read = desk.words
        if bool(lot) == bool(entry):
            raise InputError(
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            )
        if words and words.strip().isdecimal():
            raise InputError(
                f'"{words.strip()}" does not say what was checked.',
                f"If entry {words.strip()} was, write: pottle check --entry {words.strip()}",
            )
        about = desk.entry_named(entry) if entry else None
        if entry and about is None:
            raise RefusedError(
                f"There is no entry {entry_number(entry)} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
        facts = Check(about.seq if about else None, read.text_or_none(words, "words"))
        return desk.record(facts, about.draft.lot if about else read.lot_or_none(lot))
