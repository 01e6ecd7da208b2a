"""Restore: a backup is put where no book is yet.

Guarantees: a file is verified before it has its name, and others may write in it at once. Refuses:
what does not verify; on failure nothing is kept.
"""

from pathlib import Path

from ledger.errors import InputError
from ledger.service.copies.copied import Copied, check_file, made, take_up
from ledger.service.copies.import_ import import_book
from ledger.service.copies.lines import opened_lines
from ledger.service.desk.book import Clock, open_book, wall_clock
from ledger.service.evidence.seal import seal_on
from ledger.store.copies.lines import Progress, copy_file
from ledger.store.engine.connections import is_server, shown
from ledger.store.engine.files import refuse_leftovers

# How every file of SQLite begins (https://sqlite.org/fileformat.html).
_MAGIC = b"SQLite format 3\0"


def restore(file: Path, to: str, progress: Progress, clock: Clock = wall_clock) -> Copied:
    """Put a backup in a place where no book is yet, after verifying it.

    Args:
        file: The backup.
        to: Where the book goes; a server takes a backup in lines only.
        progress: Told how far it is.
        clock: The clock of the book.

    Raises:
        StorageError: It cannot be read or written, or something is in the place already.
        FindingError: It does not verify.
        InputError: It is no backup.
    """
    with opened_lines(file) as source:
        is_file = source.read(len(_MAGIC)) == _MAGIC
    if not is_file:
        return import_book(file, to, progress, clock)
    if is_server(to):
        raise InputError(
            "A server takes a book in lines, and this backup is a file of SQLite.",
            "Restore it to a file, then: pottle export FILE.jsonl and pottle import --book.",
        )
    refuse_leftovers(Path(to))
    with (
        open_book(str(file), clock) as kept,
        kept.reading() as connection,
        made(Path(to)) as part,
    ):
        seal = seal_on(connection)
        copy_file(connection, part, progress)
        check_file(part, seal, progress)
        take_up(part)
    return Copied(Path(to), seal, shown(to))
