"""Backups, and carrying a book from one place to another.

Guarantees: a copy is of one moment, is verified before it has its name, is private to its owner and
never takes another file's place; a book that is carried keeps every entry and its root. Refuses: to
restore or import what does not verify; on failure nothing is kept.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from msgspec import Struct

from ledger.domain.entries.canonical import read_canonical
from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.domain.evidence.seals import Seal, read_seal
from ledger.errors import FindingError, InputError, LedgerError, StorageError
from ledger.service.desk.book import Book, Clock, open_book, wall_clock
from ledger.service.desk.clock import today_on
from ledger.service.evidence.seal import seal_on
from ledger.store.audit.book import audit
from ledger.store.copies.lines import FORMAT, Progress, copy_file, text_lines
from ledger.store.copies.load import NOTHING_KEPT, load
from ledger.store.engine.connections import Connection, connect, is_server, reading
from ledger.store.engine.files import new_file, refuse_leftovers

MOST_BYTES_A_LINE = 10_000_000
"""The longest line of a book in lines that is read."""
_MAGIC = b"SQLite format 3\0"
_PLACE = "Choose a folder that exists, has room, and that you may write in."


class Copied(Struct, frozen=True):
    """A copy of a book."""

    path: Path
    """Where it is."""
    seal: Seal
    """What the book looked like."""


def backup(book: Book, folder: Path, progress: Progress) -> Copied:
    """Write a copy of the book, named by its day and seal, and verify it.

    Args:
        book: The book; others may go on writing in it.
        folder: Where the copy goes.
        progress: Told how far the copying is, and then the verifying.

    Raises:
        StorageError: It cannot be written, or the same copy is there already.
        FindingError: The copy does not verify.
    """
    with book.reading() as connection:
        seal = seal_on(connection)
        day = today_on(connection, book.clock())
        ending = "jsonl" if is_server(book.where) else "db"
        path = folder / f"pottle-{day}-{seal.root[:8]}.{ending}"
        with made(path) as part:
            if is_server(book.where):
                write_lines(connection, seal, part, progress)
            else:
                copy_file(connection, part, progress)
                check_file(part, seal, progress)
    return Copied(path, seal)


def export(book: Book, path: Path, progress: Progress) -> Copied:
    """Write the book as lines of text that any place can import.

    Raises:
        StorageError: It cannot be written, or there is a file already.
        FindingError: The entries do not have the root of the book's own tree.
    """
    with book.reading() as connection:
        seal = seal_on(connection)
        with made(path) as part:
            write_lines(connection, seal, part, progress)
    return Copied(path, seal)


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
    with _opened(file) as source:
        is_file = source.read(len(_MAGIC)) == _MAGIC
    if not is_file:
        return import_book(file, to, progress, clock)
    if is_server(to):
        raise InputError(
            "A server takes a book in lines, and this backup is a file of SQLite.",
            "Restore it to a file, then: pottle export FILE.jsonl and pottle import --book.",
        )
    refuse_leftovers(Path(to))
    kept = open_book(str(file), clock)
    try:
        with kept.reading() as connection, made(Path(to)) as part:
            seal = seal_on(connection)
            copy_file(connection, part, progress)
            check_file(part, seal, progress)
            _take_up(part)
    finally:
        kept.engine.dispose()
    return Copied(Path(to), seal)


def import_book(file: Path, to: str, progress: Progress, clock: Clock = wall_clock) -> Copied:
    """Make a new book from lines of text; it has every entry and the root that they had.

    Raises:
        InputError: A line does not fit.
        FindingError: The lines do not have the root or the house that the first line says.
        StorageError: The file cannot be read, or something is in the place already.
    """
    from ledger.store.form.create import create_book

    with _opened(file) as source:
        seal = _head(source)

        def fill(connection: Connection) -> None:
            reader = load(connection, _lines(source), seal.entries, progress)
            found = audit(connection, progress)
            whats = [fault.what for fault in found.faults]
            if reader.last != seal.entries:
                whats = [
                    f"The file has {reader.last} entries, and its first line says {seal.entries}."
                ]
            elif not whats and found.root.hex() != seal.root:
                whats = ["The entries do not have the root that the first line says."]
            elif not whats and (house := seal_on(connection).house) != seal.house:
                told = house or "nobody"
                whats = [f"The entries are of the house {told}, and the first line of another."]
            if whats:
                raise FindingError.of([(what, NOTHING_KEPT) for what in whats])

        create_book(Book(to, clock).engine, to, fill)
    return Copied(Path(to), seal)


def check_file(path: Path, seal: Seal, progress: Progress) -> None:
    """Make sure that a copy verifies and is of the book of a seal.

    Raises:
        FindingError: It does not.
    """
    engine = connect(str(path))
    try:
        with reading(engine) as connection:
            found = audit(connection, progress)
    finally:
        engine.dispose()
    whats = [fault.what for fault in found.faults]
    if not whats and found.root.hex() != seal.root:
        whats = ["The copy does not have the root of the book."]
    if whats:
        raise FindingError.of([(what, "No copy was kept. Run pottle verify.") for what in whats])


@contextmanager
def made(path: Path) -> Iterator[Path]:
    """Give a private file to fill that takes its name at the end.

    Raises:
        StorageError: There is a file of that name, or it cannot be written.
    """
    try:
        with new_file(path) as part:
            yield part
    except FileExistsError as error:
        raise StorageError(
            f"There is a file {path} already; it was left as it is.",
            "Give another place. Nothing was written.",
        ) from error
    except OSError as error:
        raise StorageError(
            f"The file {path} could not be written: {error.strerror}.", _PLACE
        ) from error


def write_lines(connection: Connection, seal: Seal, path: Path, progress: Progress) -> None:
    """Write the book of a seal to a file as lines, reckoning the root from them.

    Raises:
        FindingError: It is not that of the seal.
    """
    frontier = Frontier()
    with path.open("wb") as file:
        for number, line in enumerate(text_lines(connection, seal, progress)):
            data = line.encode()
            if number:
                frontier.add(leaf_hash(data))
            file.write(data + b"\n")
    if frontier.root().hex() != seal.root:
        raise FindingError(
            "The entries do not have the root of the book's own tree.",
            "Nothing was written. Run pottle verify to see what does not fit.",
        )


@contextmanager
def _opened(file: Path) -> Iterator[BinaryIO]:
    try:
        with file.open("rb") as source:
            yield source
    except OSError as error:
        raise StorageError(
            f"The file {file} could not be read: {error.strerror}.", "Check its name and rights."
        ) from error


def _head(source: BinaryIO) -> Seal:
    line = next(_lines(source), "")
    try:
        plain = read_canonical(line)
        form, lines = plain["format"], (plain["house"], plain["entries"], plain["root"])
    except (LedgerError, LookupError) as error:
        raise InputError(
            "The first line is not that of a book in lines.", "Name a file of pottle export."
        ) from error
    if form != FORMAT:
        raise InputError(
            f'The file is of the form "{form}", not "{FORMAT}".', "Use the pottle that wrote it."
        )
    return read_seal("House {}\nEntries {}\nRoot {}".format(*lines))


def _lines(source: BinaryIO) -> Iterator[str]:
    while line := source.readline(MOST_BYTES_A_LINE):
        try:
            yield line.removesuffix(b"\n").decode()
        except UnicodeDecodeError as error:
            raise InputError("A line of the file is no text in UTF-8.", NOTHING_KEPT) from error


def _take_up(path: Path) -> None:
    from ledger.store.form.create import use_write_ahead_log

    engine = connect(str(path))
    try:
        use_write_ahead_log(engine)
    finally:
        engine.dispose()
