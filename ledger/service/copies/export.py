"""Export: the book as lines of text that any place can import.

Guarantees: the lines are of one moment and are verified before the file has its name.
"""

from pathlib import Path

from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.domain.evidence.seals import Seal
from ledger.errors import FindingError
from ledger.service.copies.copied import Copied, made
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal_on
from ledger.store.copies.lines import Progress, text_lines
from ledger.store.engine.connections import Connection


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
    return Copied(path, seal, str(path))


def write_lines(connection: Connection, seal: Seal, path: Path, progress: Progress) -> None:
    """Write the book of a seal to a file as lines, reckoning the root from them.

    Raises:
        FindingError: It is not that of the seal.
    """
    frontier = Frontier()
    with path.open("wb") as file:
        for number, line in enumerate(text_lines(connection, seal, progress)):
            data = line.encode()
            # Line 0 is the head; behind the entries come details, which the root knows nothing of.
            if 0 < number <= seal.entries:
                frontier.add(leaf_hash(data))
            file.write(data + b"\n")
    if frontier.root().hex() != seal.root:
        raise FindingError(
            "The entries do not have the root of the book's own tree.",
            "Nothing was written. Run pottle verify to see what does not fit.",
        )
