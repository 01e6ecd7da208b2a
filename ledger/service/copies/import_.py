"""Import: a new book from the lines of an export.

Guarantees: a book that is carried keeps every entry and its root. Refuses: what does not verify;
on failure nothing is kept.
"""

from pathlib import Path

from ledger.errors import FindingError
from ledger.service.copies.copied import Copied
from ledger.service.copies.lines import opened_lines, read_head, read_lines
from ledger.service.desk.book import Book, Clock, wall_clock
from ledger.service.evidence.seal import seal_on
from ledger.store.audit.book import audit
from ledger.store.copies.lines import Progress
from ledger.store.copies.load import NOTHING_KEPT, load
from ledger.store.engine.connections import Connection, shown


def import_book(file: Path, to: str, progress: Progress, clock: Clock = wall_clock) -> Copied:
    """Make a new book from lines of text; it has every entry and the root that they had.

    Raises:
        InputError: A line does not fit.
        FindingError: The lines do not have the root or the house that the first line says.
        StorageError: The file cannot be read, or something is in the place already.
    """
    from ledger.store.form.create import create_book

    with opened_lines(file) as source:
        seal = read_head(source)

        def fill(connection: Connection) -> None:
            reader = load(connection, read_lines(source), seal.entries, progress)
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

        with Book(to, clock) as book:
            create_book(book.engine, to, fill)
    return Copied(Path(shown(to)), seal, shown(to))
