"""How fast the lines of an export become a book, against plain executemany of the same rows.

The lines are read, checked and hashed as an import does it. The plain rows go into the same tables,
with the same settings, guards, indexes and references, in the same chunks, by the bare driver and
without a hash; like the import they lay aside the guards of the order in which rows come. Both
begin with a book that has no entry.
"""

import sqlite3
import tempfile
from collections.abc import Sequence
from contextlib import closing
from functools import partial
from pathlib import Path
from shutil import copyfile

from ledger.store.copies.load import CHUNK, load
from ledger.store.engine.connections import connected, writing
from ledger.store.form.appends import out_of_order
from ledger.store.form.columns import IN_ORDER
from ledger.store.form.create import create_book
from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import best_seconds, line

LOTS = 3_000
TURNS = 5
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


def lines_of(where: str) -> list[str]:
    """Return the texts of all entries."""
    with closing(sqlite3.connect(where)) as connection:
        return [row[0] for row in connection.execute("SELECT body FROM entry ORDER BY seq")]


def insert_plainly(where: str, chunks: Sequence[list[tuple[str, Rows]]]) -> None:
    """Insert rows by the bare driver, in one transaction."""
    with (
        connected(where) as engine,
        writing(engine) as connection,
        out_of_order(connection),
    ):
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)
        for chunk in chunks:
            for table, rows in chunk:
                marks = ", ".join("?" * len(rows[0]))
                driver.executemany(f'INSERT INTO "{table}" VALUES ({marks})', rows)


def load_lines(where: str, lines: Sequence[str]) -> None:
    """Load the lines as an import does."""
    with connected(where) as engine, writing(engine) as connection:
        load(connection, lines, len(lines), lambda _done, _total: None)


def rates(lots: int, turns: int) -> tuple[float, float]:
    """Return how many entries a second of a book of so many lots went in, ours and plainly."""
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        filled = str(Path(folder) / "filled.db")
        book_of(lots, filled).close()
        lines = lines_of(filled)
        chunks = [
            rows_of(filled, start, start + CHUNK - 1) for start in range(1, len(lines) + 1, CHUNK)
        ]
        places = [str(Path(folder) / f"{number}.db") for number in range(2 * turns)]
        with connected(places[0]) as engine:
            create_book(engine, places[0])
        for where in places[1:]:
            copyfile(places[0], where)
        ours = [partial(load_lines, where, lines) for where in places[:turns]]
        plain = [partial(insert_plainly, where, chunks) for where in places[turns:]]
        taken, bare = best_seconds([lambda: ours.pop()(), lambda: plain.pop()()], turns)
        written = {where: lines_of(where) for where in places}
    assert all(found == lines for found in written.values())
    return len(lines) / taken, len(lines) / bare


def main() -> None:
    """Print the ratio."""
    ours, plain = rates(LOTS, TURNS)
    print(f"{ours:,.0f} entries a second, plain {plain:,.0f}")
    line("import of lines / plain executemany (rate)", ours / plain, "at least 0.4")


if __name__ == "__main__":
    main()
