"""What SQLite may have left beside the place of a new book.

Guarantees: no book takes up the log of another. Refuses: to remove what was left, which may hold
that book's last entries.
"""

from pathlib import Path

from ledger.errors import StorageError


def refuse_leftovers(path: Path) -> None:
    """Make sure that no book to be put at `path` would take up what another left beside it.

    Where a file is at `path` itself, the log is its own; that file is refused by who makes another.

    Raises:
        StorageError: A log of SQLite's is there, which would be written into the new book.
    """
    if path.exists():
        return
    for ending in ("-wal", "-journal"):
        left = path.with_name(path.name + ending)
        if left.exists():
            raise StorageError(
                f"There is a file {left}, left by another book that was at {path}.",
                "Move it to a safe place first: it may hold that book's last entries.",
            )
