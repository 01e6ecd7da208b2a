"""How fast a lot's contents are reckoned, against its trace.

``python -m tests.benchmarks.bench_contents [LOTS ...] [--in FOLDER]`` on books of those sizes, kept
in the folder and made where missing. Both are told of the same packed lots from all over the book:
a trace back with what it says of each lot met, and the contents as a serving card takes them.
"""

import argparse
import tempfile
import time
from functools import partial
from pathlib import Path

from sqlalchemy import Connection

from ledger.domain.entries.choices import LotType
from ledger.service.account.contents import contents_on
from ledger.service.desk.book import Book, open_book
from ledger.service.lots.trace import trace_on
from ledger.store.engine.statements import ask_column
from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import best_seconds, line

SIZES = (10_000, 100_000)
SAMPLE = 60
"""How many lots of a book are measured."""


def packed_lots(connection: Connection) -> list[str]:
    """Return packed lots from all over a book."""
    query = "SELECT code FROM lot WHERE lot_type = :type ORDER BY id"
    found = ask_column(connection, query, type=str(LotType.PACKED))
    return found[:: max(len(found) // SAMPLE, 1)]


def trace_all(connection: Connection, codes: list[str]) -> None:
    """Trace lots back."""
    for code in codes:
        trace_on(connection, code, forward=False)


def reckon_all(connection: Connection, codes: list[str]) -> None:
    """Reckon what lots contain."""
    for code in codes:
        contents_on(connection, code)


def measure(book: Book, lots: int) -> None:
    """Print the ratio for one book, and how long one lot takes."""
    with book.reading() as connection:
        codes = packed_lots(connection)
        found = contents_on(connection, codes[-1])
        assert found.contents.abv > 0, "the lots of the book have no strength"
        traced, reckoned = best_seconds(
            [partial(trace_all, connection, codes), partial(reckon_all, connection, codes)],
            5,
            time.process_time,
        )
    line(f"{lots:,} lots: contents / trace back", reckoned / traced, "at most 2.5")
    print(
        f"   {reckoned / len(codes) * 1e3:.2f} ms a lot, traced {traced / len(codes) * 1e3:.2f} ms"
    )


def main() -> None:
    """Measure the books asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("lots", nargs="*", type=int, default=SIZES)
    parser.add_argument("--in", dest="folder", type=Path)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as passing:
        folder = told.folder or Path(passing)
        for lots in told.lots:
            where = folder / f"{lots}.db"
            book = open_book(str(where)) if where.exists() else book_of(lots, str(where))
            measure(book, lots)
            book.close()


if __name__ == "__main__":
    main()
