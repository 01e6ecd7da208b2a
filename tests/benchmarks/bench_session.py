"""How long an act takes in the session of short lines, from the line to its answer.

``python -m tests.benchmarks.bench_session [LOTS ...]`` makes books of so many lots (1,000 and
10,000 if not said), does acts of all sorts in each, and tells median and 99th percentile in
milliseconds, of all and of each sort, and how many times as long an act takes as in the first book.
With ``--in FOLDER`` a copy is taken of the book of that size which is kept there.
"""

import argparse
import gc
import io
import os
import statistics
import tempfile
import time
from collections import defaultdict
from collections.abc import Iterable
from contextlib import redirect_stdout
from datetime import timedelta
from itertools import chain
from pathlib import Path
from shutil import copyfile

from cli.kit.call import Call
from cli.screens.bench.evening import Evening
from ledger.service.desk.book import Book, open_book
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


def milliseconds(book: Book, most: int = ACTS) -> dict[str, list[float]]:
    """Do acts in batches that are begun for them, and return how long each took, by what it is."""
    gc.freeze()  # as the program does before a session: what is loaded is no garbage
    evening, taken = Evening(Call(by="AB"), book), defaultdict[str, list[float]](list)
    with redirect_stdout(io.StringIO()):
        for number in range(most):
            if number % OF_A_BATCH == 0:
                assert not evening.do(BEGIN)
            began = time.perf_counter()
            code = evening.do(acts(number))
            what = acts(number).partition(" ")[0]
            taken[what].append(1000 * (time.perf_counter() - began))
            assert code == 0, acts(number)
    return taken


def late(taken: Iterable[float]) -> tuple[float, float]:
    """Return the median and the 99th percentile of times."""
    ordered = sorted(taken)
    return statistics.median(ordered), ordered[int(len(ordered) * 0.99)]


def later(book: Book) -> Book:
    """Return a book with its clock a minute after its last entry."""
    with book.reading() as connection:
        last = last_recorded(connection)
    assert last is not None
    book.clock = lambda: last + timedelta(minutes=1)
    return book


def book_in(folder: Path, lots: int, kept: Path | None) -> Book:
    """Return a book of so many lots in a folder, copied where one is kept elsewhere."""
    where = folder / f"{lots}.db"
    if kept is None or not (kept / where.name).exists():
        return book_of(lots, str(where))
    copyfile(kept / where.name, where)
    os.sync()  # else the first act waits until all of the copy is on the disk
    return open_book(str(where))


def main() -> None:
    """Print the times and the ratios."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("sizes", nargs="*", type=int, default=[1000, 10_000])
    parser.add_argument("--in", dest="kept", type=Path)
    asked, first = parser.parse_args(), 0.0
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        os.environ["XDG_STATE_HOME"] = folder
        for lots in asked.sizes:
            with later(book_in(Path(folder), lots, asked.kept)) as book:
                taken = milliseconds(book)
            median, latest = late(chain.from_iterable(taken.values()))
            print(f"{lots:,} lots: {median:.1f} ms, 99th percentile {latest:.1f} ms of {LIMIT_MS}")
            told = ((what, *late(spent)) for what, spent in taken.items())
            print("  " + ", ".join(f"{what} {half:.1f} ({most:.1f})" for what, half, most in told))
            first = first or median
            line(f"an act in a session, {lots:,} lots, against the first", median / first, "≤ 1.5")


if __name__ == "__main__":
    main()
