"""How fast a book is verified, against hashing what it reads: all texts, and all rows.

The texts of the entries are less than half of what verifying reads; the rows of all tables, the
tree among them, are the other part, so the same loop is told over these too. The floor is what
no verifying can do without: every row read once, by the bare driver, and every text hashed. The
loops run on one core, verifying on two: beside the time on the clock, which other work on the
machine makes longer, stands the processor time of the busier of its two threads. What the engine
does to check its own file (pages, indexes, references) is part of verifying and is told apart, as
is the slow comparison that runs when anything does not fit.
"""

import sqlite3
import sys
import tempfile
import time
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import closing
from hashlib import sha256
from pathlib import Path

from sqlalchemy import Connection

from ledger.service.desk.book import Book
from ledger.service.evidence.verify import verify
from ledger.store.audit.beside import Beside, beside
from ledger.store.audit.file import form_faults
from ledger.store.audit.rows import Reader, chunk_faults
from ledger.store.audit.storage import engine_faults
from ledger.store.audit.swift import sound_tree
from ledger.store.form.columns import IN_ORDER, columns_of
from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import best_seconds, line

LOTS = 10_000
SLOWLY = 2_000
"""How many entries are compared slowly."""


def hash_all(where: str) -> None:
    """Hash every text, one after the other."""
    with closing(sqlite3.connect(where)) as connection:
        for (body,) in connection.execute("SELECT body FROM entry ORDER BY seq"):
            sha256(b"\x00" + body.encode()).digest()


def read_rows(where: str) -> Iterator[tuple[object, ...]]:
    """Yield every row of every table."""
    with closing(sqlite3.connect(where)) as connection:
        for table in IN_ORDER:
            yield from connection.execute(f'SELECT * FROM "{table}"')


def hash_rows(where: str) -> None:
    """Hash every row of every table, one after the other."""
    for row in read_rows(where):
        sha256(repr(row).encode()).digest()


def read_and_hash(where: str) -> None:
    """Read every row of every table, and hash every text: the floor."""
    text = columns_of("entry").index("body")
    with closing(sqlite3.connect(where)) as connection:
        for table in IN_ORDER:
            found = connection.execute(f'SELECT * FROM "{table}"')
            if table != "entry":
                deque(found, maxlen=0)
                continue
            for row in found:
                sha256(b"\x00" + row[text].encode()).digest()


def busier_thread_s(book: Book) -> float:
    """Verify a book and return the processor time of the busier of its two threads."""
    beside_it, read = [0.0], Beside._read

    def reading(second: Beside, reader: Callable[[Connection], object]) -> object:
        began = time.thread_time()
        try:
            return read(second, reader)
        finally:
            beside_it[0] += time.thread_time() - began

    Beside._read = reading  # type: ignore[assignment,method-assign]
    began = time.thread_time()
    try:
        verify(book)
    finally:
        Beside._read = read  # type: ignore[method-assign]
    return max(time.thread_time() - began, beside_it[0])


def compare_slowly(connection: Connection) -> None:
    """Compare the first entries row by row."""
    reader = Reader()
    assert list(chunk_faults(connection, reader, 1, SLOWLY)) == []


def compare_swiftly(connection: Connection, last: int) -> None:
    """Tell whether all rows fit."""
    with beside(connection) as second:
        assert sound_tree(connection, last, lambda done, total: None, second)


def check_storage(connection: Connection) -> None:
    """Let the engine check its own file."""
    assert [*form_faults(connection), *engine_faults(connection)] == []


def measure(book: Book) -> None:
    """Print the ratios and the rates."""
    with book.reading() as connection:
        last = connection.exec_driver_sql("SELECT MAX(seq) FROM entry").scalar_one()
        whole, hashed, every, read, swift, storage, slow = best_seconds(
            [
                lambda: verify(book),
                lambda: hash_all(book.where),
                lambda: hash_rows(book.where),
                lambda: deque(read_rows(book.where), maxlen=0),
                lambda: compare_swiftly(connection, last),
                lambda: check_storage(connection),
                lambda: compare_slowly(connection),
            ],
            5,
        )
        (floor,) = best_seconds([lambda: read_and_hash(book.where)], 5, time.process_time)
    assert verify(book).faults == ()
    busier = min(busier_thread_s(book) for _ in range(5))
    line("verify, its busier thread / its floor (rate)", floor / busier, "at least 0.55")
    line("verify / hashing the same texts (rate)", hashed / whole, "at least 0.5")
    line("verify / hashing every row of every table (rate)", every / whole, "")
    line("   reading every row of every table alone", hashed / read, "")
    line("   comparing every row with its text alone", hashed / swift, "")
    line("   the engine's check of its own file alone", hashed / storage, "")
    line("   comparing slowly, when anything differs", hashed / last / (slow / SLOWLY), "")
    print(f"{last / whole:,.0f} entries a second verified, {last / hashed:,.0f} hashed")


def main() -> None:
    """Measure a book of a given number of lots, or of ten thousand."""
    lots = int(sys.argv[1]) if len(sys.argv) > 1 else LOTS
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        book = book_of(lots, str(Path(folder) / "book.db"))
        measure(book)
        book.close()


if __name__ == "__main__":
    main()
