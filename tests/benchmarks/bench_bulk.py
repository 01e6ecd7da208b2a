"""How fast many entries are appended at once, against plain executemany of the same rows.

The plain rows go into the same tables, with the same guards, indexes and references, in the same
chunks, by the bare driver and without a hash.
"""

import sqlite3
import tempfile
import time
from collections.abc import Sequence
from contextlib import closing
from functools import partial
from pathlib import Path

from ledger.domain.entries import Entry
from ledger.store.bulk import CHUNK
from ledger.store.columns import IN_ORDER
from tests.benchmarks.books import empty_book, entries_of, fill
from tests.benchmarks.ratios import best_seconds, line

LOTS = 3_000
Rows = list[tuple[object, ...]]


def rows_of(where: str, first: int, last: int) -> list[tuple[str, Rows]]:
    """Return the rows of some entries, table by table, in an order that can be inserted."""
    found = []
    with closing(sqlite3.connect(where)) as connection:
        for table in IN_ORDER:
            key = {"lot": "id", "tree": "((place + 1) << height)"}.get(table, "seq")
            query = f'SELECT * FROM "{table}" WHERE {key} BETWEEN {first} AND {last}'
            if rows := connection.execute(query).fetchall():
                found.append((table, rows))
    return found


def insert_plainly(where: str, chunks: Sequence[list[tuple[str, Rows]]]) -> None:
    """Insert rows by the bare driver, in one transaction."""
    connection = sqlite3.connect(where, isolation_level=None)
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("BEGIN IMMEDIATE")
    for chunk in chunks:
        for table, rows in chunk:
            marks = ", ".join("?" * len(rows[0]))
            connection.executemany(f'INSERT INTO "{table}" VALUES ({marks})', rows)
    connection.execute("COMMIT")
    connection.close()


def main() -> None:
    """Print the ratio."""
    entries = list(entries_of(LOTS))
    first, last = entries[0].seq, entries[-1].seq
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        made = 0

        def new_book() -> str:
            nonlocal made
            made += 1
            where = str(Path(folder) / f"{made}.db")
            empty_book(where).engine.dispose()
            return where

        filled = new_book()
        fill_at(filled, entries)
        chunks = [
            rows_of(filled, start, min(start + CHUNK - 1, last))
            for start in range(first, last + 1, CHUNK)
        ]
        places = [new_book() for _ in range(10)]
        ours = [partial(fill_at, where, entries) for where in places[:5]]
        plain = [partial(insert_plainly, where, chunks) for where in places[5:]]
        taken, bare = best_seconds(
            [lambda: ours.pop()(), lambda: plain.pop()()], 5, time.process_time
        )
    print(f"{len(entries) / taken:,.0f} entries a second in bulk, plain {len(entries) / bare:,.0f}")
    line("bulk append / plain executemany (rate)", bare / taken, "at least 0.4")


def fill_at(where: str, entries: Sequence[Entry]) -> None:
    """Put entries into the book at a path."""
    from ledger.service.book import open_book

    book = open_book(where)
    fill(book, entries)
    book.engine.dispose()


if __name__ == "__main__":
    main()
