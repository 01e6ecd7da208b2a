"""A rehearsal of losing the book: its newest copy is put back aside, and compared with the book.

Guarantees: the copy is verified whole and held to be the beginning of the book; the book is only
read, and what was put back is taken away again. Refuses: to call a copy of another book one of
this.
"""

import re
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from msgspec import Struct

from ledger.domain.evidence.seals import Seal
from ledger.errors import FindingError, InputError
from ledger.service.copies.restore import restore
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal_faults, seal_on
from ledger.store.copies.lines import Progress
from ledger.store.read import queries

_NAME = re.compile(r"pottle-(\d{4}-\d{2}-\d{2})-[0-9a-f]{8}\.(?:db|jsonl)")


class Rehearsed(Struct, frozen=True):
    """What a rehearsal found."""

    copy: Path
    """The newest copy."""
    copies: int
    """How many copies there are."""
    kept: Seal
    """The seal of that copy."""
    now: Seal
    """The seal of the book."""
    kept_until: datetime | None
    """When the last entry of the copy was recorded."""

    @property
    def lost(self) -> int:
        """How many entries would be lost."""
        return self.now.entries - self.kept.entries


def rehearse(book: Book, folder: Path, progress: Progress) -> Rehearsed:
    """Put the newest copy in a folder back aside, verify it, and compare it with the book.

    Raises:
        InputError: There is no such folder.
        FindingError: There is no copy, it does not verify, or it is not of this book.
        StorageError: It cannot be read, or there is no room for it.
    """
    copies = _copies(folder)
    if not copies:
        raise FindingError(
            f"There is no copy in {folder}, so all of the book would be lost.",
            f"Make one with: pottle backup {folder}",
        )
    newest = copies[-1]
    with TemporaryDirectory(prefix="pottle-rehearsal-") as aside:
        kept = restore(newest, str(Path(aside) / "pottle.db"), progress).seal
    with book.reading() as connection:
        faults = list(seal_faults(connection, kept))
        now = seal_on(connection)
        last = queries.entry(connection, kept.entries) if not faults else None
    if faults:
        todo = "Keep both as they are; make another copy with: pottle backup DIR"
        raise FindingError.of([(f"The copy {newest} is not of this book: {faults[0]}", todo)])
    return Rehearsed(newest, len(copies), kept, now, last.recorded_at if last else None)


def _copies(folder: Path) -> list[Path]:
    """Return the copies in a folder, the oldest first: by the day in their names, then by age."""
    if not folder.is_dir():
        raise InputError(f"There is no folder {folder}.", "Name the folder of the copies.")
    found = [path for path in folder.iterdir() if _NAME.fullmatch(path.name)]
    return sorted(found, key=lambda path: (path.name[:17], path.stat().st_mtime_ns))
