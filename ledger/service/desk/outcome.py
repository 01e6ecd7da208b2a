"""What became of a commit that nobody answered for: the book itself is asked again.

Guarantees: an entry is said to stand only where its number has its leaf; where nobody can be asked,
that is said. Refuses: to record anything, and to try again by itself.
"""

import time

from ledger.domain.entries import Entry
from ledger.domain.entries.plain import entry_text
from ledger.domain.evidence.merkle import leaf_hash
from ledger.errors import StorageError
from ledger.service.desk.book import Book
from ledger.store.write.recorder import leaf_of

TRIES = 3
"""So often is the book asked."""
PAUSE_S = 1.0
"""Between two of them: a server that was started anew is back within seconds (common practice, no
source)."""


def stands(book: Book, last: Entry, what: str) -> bool:
    """Return whether a transaction is in the book of whose commit nothing is known.

    Args:
        book: The book.
        last: The last entry of the transaction, of which all is recorded or nothing.
        what: What was said instead, as a sentence.

    Raises:
        StorageError: The book does not answer, so that it is not known.
    """
    for again in range(TRIES):
        if again:
            time.sleep(PAUSE_S)
        try:
            # In a writer's turn, which comes once the lost transaction is through or given up.
            with book.writing() as connection:
                return leaf_of(connection, last.seq) == leaf_hash(entry_text(last).encode())
        except StorageError:
            # A connection that was lost is not to be had again.
            book.close()
    raise StorageError(
        f"{what} Whether entry {last.seq} was recorded is not known, for the book does not answer.",
        f"When it answers again, pottle journal --entry {last.seq} says whether it is this one; "
        "enter it again only if it is not.",
    )
