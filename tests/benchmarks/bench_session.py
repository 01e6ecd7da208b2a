"""How long an act takes in the session of short lines, from the line to its answer.

``python -m tests.benchmarks.bench_session [LOTS ...]`` makes books of so many lots (1,000 and
10,000 if not said), does acts of all sorts in each, and tells median and 99th percentile in
milliseconds, and how many times as long an act takes as in the first book.
"""

import io
import os
import statistics
import sys
import tempfile
import time
from contextlib import redirect_stdout
from datetime import timedelta
from pathlib import Path

from cli.kit.call import Call
from cli.screens.bench.evening import Evening
from ledger.service.desk.book import Book
from ledger.store.read.end import last_recorded
from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import line

ACTS, OF_A_BATCH = 300, 15
BEGIN = "pottle start --product Tried --kind essence --target 1L"
LIMIT_MS = 20
"""So long may an act take, at the 99th percentile, where nothing else goes on."""


def acts(number: int) -> str:
    """Return a line, of all sorts by turns, and no two alike in a row."""
    return (
        f"spirit {1 + number / 1000:.3f}",
        f"note Line {number}.",
        f"hazy {1 + number / 100:.2f}",
        f"oil {1 + number / 1000:.3f}",
        f"ph {3 + number / 1000:.3f}",
    )[number % 5]


def milliseconds(book: Book) -> list[float]:
    """Do the acts in batches that are begun for them, and return how long each took, in order."""
    evening, taken = Evening(Call(by="AB"), book), list[float]()
    with redirect_stdout(io.StringIO()):
        for number in range(ACTS):
            if number % OF_A_BATCH == 0:
                assert not evening.do(BEGIN)
            began = time.perf_counter()
            code = evening.do(acts(number))
            taken.append(1000 * (time.perf_counter() - began))
            assert code == 0, acts(number)
    return sorted(taken)


def later(book: Book) -> Book:
    """Return a book with its clock a minute after its last entry."""
    with book.reading() as connection:
        last = last_recorded(connection)
    assert last is not None
    book.clock = lambda: last + timedelta(minutes=1)
    return book


def main(sizes: list[int]) -> None:
    """Print the times and the ratios."""
    first = 0.0
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        os.environ["XDG_STATE_HOME"] = folder
        for lots in sizes:
            with later(book_of(lots, str(Path(folder) / f"{lots}.db"))) as book:
                taken = milliseconds(book)
            median, late = statistics.median(taken), taken[int(len(taken) * 0.99)]
            print(f"{lots:,} lots: {median:.1f} ms, 99th percentile {late:.1f} ms of {LIMIT_MS}")
            first = first or median
            line(f"an act in a session, {lots:,} lots, against the first", median / first, "≤ 1.5")


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or [1000, 10_000])
