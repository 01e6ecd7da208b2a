"""How fast an addition is recorded, against a row more in a workbook, which is the usual other way.

The workbook is opened, gets the row and is written again, as a program does that keeps one; its
rows are what an addition is: number, day, who, from which lot, into which, how much.
"""

import os
import tempfile
from functools import partial
from itertools import count
from pathlib import Path

from openpyxl import Workbook, load_workbook

from ledger.service.bench.add import add
from ledger.service.desk.book import How
from tests.benchmarks.bench_append import book_in
from tests.benchmarks.ratios import best_seconds, line

SIZES = (1_000, 10_000)
"""How many rows the workbook has."""


def workbook_in(folder: str, rows: int) -> Path:
    """Return a workbook of so many additions."""
    book = Workbook(write_only=True)
    sheet = book.create_sheet("additions")
    for number in range(1, rows + 1):
        sheet.append([number, "2026-03-02 10:15", "AB", "O-001-5", f"E-{number:03d}", 30.5, "mL"])
    where = Path(folder) / f"rows{rows}.xlsx"
    book.save(where)
    return where


def append_row(where: Path, numbers: "count[int]") -> None:
    """Open the workbook, put a row to its end, write it and wait for the disk."""
    book = load_workbook(where)
    book.active.append([next(numbers), "2026-03-02 10:15", "AB", "O-001-5", "E-1", 30.5, "mL"])
    book.save(where)
    with where.open("rb+") as file:
        os.fsync(file.fileno())


def main() -> None:
    """Print the ratios."""
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        book, oil, batches = book_in(folder)
        how, turns = How(by="AB"), count()

        def act() -> None:
            lot = batches[next(turns) % len(batches)]
            add(book, how, lot=lot, source=oil, amount=f"{next(turns) + 1} mL")

        for rows in SIZES:
            where = workbook_in(folder, rows)
            append = partial(append_row, where, count(rows + 1))
            ours, theirs = best_seconds([act, append], times=5)
            line(f"a row more in a workbook of {rows:,}, in additions", theirs / ours, "at least 1")
            print(f"  {theirs * 1000:.0f} ms; an addition {ours * 1000:.1f} ms")
        book.close()


if __name__ == "__main__":
    main()
