"""Keeping the book: notes, checks, cleaning and equipment.

Guarantees: what is told of an entry is kept with the lot that the entry is about. Refuses: a check
of a lot and of an entry at once.
"""

from ledger.domain.entries import Check, Clean, Equipment, Note
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.numbers import entry_named, entry_number


def note(book: Book, how: How, *, text: str, lot: str | None = None) -> Recorded:
    """Record free words, about a lot or about nothing in particular."""
    with at_desk(book, how) as desk:
        facts = Note(desk.words.text(text, "note"))
        return desk.record(facts, desk.words.lot_or_none(lot))


def check(
    book: Book,
    how: How,
    *,
    lot: str | None = None,
    entry: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record that a lot, or one entry, was checked."""
    with at_desk(book, how) as desk:
        read = desk.words
        if bool(lot) == bool(entry):
            raise InputError(
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            )
        about = entry_named(desk, entry) if entry else None
        if entry and about is None:
            raise RefusedError(
                f"There is no entry {entry_number(entry)} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
        facts = Check(about.seq if about else None, read.text_or_none(words, "words"))
        return desk.record(facts, about.draft.lot if about else read.lot_or_none(lot))


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


def equipment(book: Book, how: How, *, name: str, words: str) -> Recorded:
    """Record that an instrument or vessel was taken into use, checked or set."""
    with at_desk(book, how) as desk:
        read = desk.words
        return desk.record(Equipment(read.text(name, "name"), read.text(words, "finding")))
