"""Reading a book in lines: its head and its entries, line by line.

Guarantees: one line at a time is read, and given without its end. Refuses: a line longer than any
entry, and bytes that are no UTF-8.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from ledger.domain.entries.canonical import read_canonical
from ledger.domain.evidence.seals import Seal, read_seal
from ledger.errors import InputError, LedgerError, StorageError
from ledger.store.copies.lines import FORMAT, OLD_FORMATS
from ledger.store.copies.load import NOTHING_KEPT

MOST_BYTES_A_LINE = 10_000_000
"""The longest line of a book in lines that is read."""


@contextmanager
def opened_lines(file: Path) -> Iterator[BinaryIO]:
    """Open a book in lines.

    Raises:
        StorageError: It cannot be read.
    """
    try:
        with file.open("rb") as source:
            yield source
    except OSError as error:
        raise StorageError(
            f"The file {file} could not be read: {error.strerror}.", "Check its name and rights."
        ) from error


def read_head(source: BinaryIO) -> Seal:
    """Return the seal that the first line states.

    Raises:
        InputError: It is no first line of a book in lines.
    """
    line = next(read_lines(source), "")
    try:
        plain = read_canonical(line)
        form, lines = plain["format"], (plain["house"], plain["entries"], plain["root"])
    except (LedgerError, LookupError) as error:
        raise InputError(
            "The first line is not that of a book in lines.", "Name a file of pottle export."
        ) from error
    if form != FORMAT and form not in OLD_FORMATS:
        raise InputError(
            f'The file is of the form "{form}", not "{FORMAT}".', "Use the pottle that wrote it."
        )
    return read_seal("House {}\nEntries {}\nRoot {}".format(*lines))


def read_lines(source: BinaryIO) -> Iterator[str]:
    """Yield the lines that are left, each without its end.

    Raises:
        InputError: A line is no text in UTF-8.
    """
    # A longer line comes in pieces, and no piece is an entry.
    while line := source.readline(MOST_BYTES_A_LINE):
        try:
            yield line.removesuffix(b"\n").decode()
        except UnicodeDecodeError as error:
            raise InputError("A line of the file is no text in UTF-8.", NOTHING_KEPT) from error
