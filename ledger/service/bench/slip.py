"""A slip at the bench: the last thing that somebody wrote, to be struck while it is fresh.

Guarantees: only one's own entry, and only for so long as nobody can have acted on it. Refuses:
what was struck or corrected already, and what the book wrote itself.
"""

from datetime import timedelta

from ledger.domain.entries import Deviation, Entry, Strike
from ledger.errors import RefusedError
from ledger.service.desk.book import Book
from ledger.store.read import queries

FRESH = timedelta(minutes=10)
"""How long a slip can be undone by one word (common practice, no source)."""
LOOKED_THROUGH = 60
"""How many of the last entries of the book are looked through, of all who write in it."""


def last_slip(book: Book, by: str | None) -> Entry:
    """Return the last entry of a person that can be undone.

    Raises:
        RefusedError: There is none of the last minutes.
    """
    who = (by or "").strip().upper()
    with book.reading() as connection:
        now = book.now(connection)
        rows = queries.journal(connection, LOOKED_THROUGH)
    for _, entry, corrected_by in reversed(rows):
        if entry and corrected_by is None and who and entry.draft.by == who and _is_act(entry):
            if now - entry.recorded_at <= FRESH:
                return entry
            break
    raise RefusedError(
        f"There is nothing of the last {FRESH.seconds // 60} minutes by {who or 'nobody'} to undo.",
        "Strike an older entry by its number: pottle strike NUMBER --because REASON",
    )


def _is_act(entry: Entry) -> bool:
    return entry.draft.corrects is None and not isinstance(entry.facts, Deviation | Strike)
