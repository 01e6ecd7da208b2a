"""Backup: a verified copy of the book, named by day and seal.

Guarantees: a copy is of one moment, is verified before it has its name, is private to its owner and
never takes another file's place; where the same copy is there already, whole, it is told.
"""

import shlex
from pathlib import Path

from ledger.domain.evidence.seals import Seal
from ledger.errors import LedgerError, StorageError
from ledger.service.copies.copied import Copied, check_file, is_copy_in_lines, made
from ledger.service.copies.export import write_lines
from ledger.service.desk.book import Book
from ledger.service.desk.clock import today_on
from ledger.service.evidence.seal import seal_on
from ledger.store.copies.lines import Progress, copy_file
from ledger.store.engine.connections import is_server


def backup(book: Book, folder: Path, progress: Progress) -> Copied:
    """Write a copy of the book, named by its day and seal, and verify it.

    Args:
        book: The book; others may go on writing in it.
        folder: Where the copy goes.
        progress: Told how far the copying is, and then the verifying.

    Raises:
        StorageError: It cannot be written, or a file that is no such copy has its name.
        FindingError: The copy does not verify.
    """
    if file := next((each for each in (folder, *folder.parents) if each.is_file()), None):
        raise StorageError(
            f"{file} is a file, where a folder to put the copy in was expected.",
            "Name a folder that is there; without a name the copy goes where you are.",
        )
    if not folder.is_dir():
        raise StorageError(
            f"There is no folder {folder} to put the copy in.",
            f"Make it with mkdir {shlex.quote(str(folder))}, or name one that is there; without a "
            "name the copy goes where you are.",
        )
    with book.reading() as connection:
        seal = seal_on(connection)
        day = today_on(connection, book.clock())
        ending = "jsonl" if is_server(book.where) else "db"
        path = folder / f"pottle-{day}-{seal.root[:8]}.{ending}"
        if path.is_file() and _is_there(path, seal, progress):
            return Copied(path, seal, str(path), is_new=False)
        with made(path) as part:
            if is_server(book.where):
                write_lines(connection, seal, part, progress)
            else:
                copy_file(connection, part, progress)
                check_file(part, seal, progress)
    return Copied(path, seal, str(path))


def _is_there(path: Path, seal: Seal, progress: Progress) -> bool:
    if path.suffix == ".jsonl":
        return is_copy_in_lines(path, seal)
    try:
        check_file(path, seal, progress)
    except LedgerError:
        return False
    return True
