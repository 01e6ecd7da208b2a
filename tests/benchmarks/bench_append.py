"""How fast entries are appended durably, one a transaction, against the same rows by plain SQL.

The plain rows go into bare tables. What the book's own tables cost by themselves, with their
indexes, conditions, references and guards, is told apart: the same rows by the bare driver into a
copy of the book. Two floors of an append are told too. One is the very statements that the verb
runs, by the bare driver, with the text of each entry made and hashed, and not a line of the rules.
The other is that of any design whose rules see frozen data: the same, and what was read made into
entries, by the function that the readers use, named rows, and states of lots; nothing is looked at.
"""

import json
import sqlite3
import tempfile
import time
from collections import namedtuple
from collections.abc import Callable, Iterator
from contextlib import closing
from functools import cache, partial
from itertools import count, islice
from pathlib import Path
from typing import Any, ClassVar
from unittest.mock import patch

from ledger.domain.entries.canonical import canonical_text
from ledger.domain.entries.plain import kept_entry
from ledger.domain.evidence.merkle import leaf_hash
from ledger.domain.lots.state import LotState
from ledger.service.bench.add import add
from ledger.service.bench.receive import receive
from ledger.service.bench.start import start
from ledger.service.desk.book import Book, How
from ledger.service.masters.house import init
from ledger.service.masters.material import material
from ledger.service.masters.person import person
from tests.benchmarks.bench_bulk import Rows, rows_of
from tests.benchmarks.ratios import best_by, line

ENTRIES = 150
TURNS = 3
BATCHES = 30
FIRST = 5 + BATCHES
"""Number of the first addition: after house, person, material, receipt and batches."""


Told = list[tuple[str, Any]]
"""Statements with their values, as the driver of a file was given them."""


class Heard(sqlite3.Connection):
    """A connection that tells what it is asked to run."""

    told: ClassVar[Told] = []

    def execute(self, statement: str, cells: Any = ()) -> sqlite3.Cursor:
        """Run a statement and remember it."""
        self.told.append((statement, cells))
        return super().execute(statement, cells)


def heard(book: Book, act: Callable[[], object]) -> Told:
    """Return what the driver of a book's file is asked to run by an act, without its settings."""
    Heard.told.clear()
    book.close()
    with patch("ledger.store.engine.bare.sqlite3.connect", partial(sqlite3.connect, factory=Heard)):
        act()
    book.close()
    return [(said, cells) for said, cells in Heard.told if not said.startswith("PRAGMA")]


def book_in(folder: str) -> tuple[Book, str, list[str]]:
    """Return a book with an oil lot and some batches."""
    book = init(str(Path(folder) / "pottle.db"), name="Bench", currency="EUR")
    how = How(by="AB")
    person(book, how, initials="AB", name="Ada Brook")
    material(book, how, code="oil", kind="oil")
    oil = receive(book, how, material="oil", amount="1000 L").code or ""
    begun = (
        start(book, how, product="Essence", kind="essence", target="5 L") for _ in range(BATCHES)
    )
    return book, oil, [recorded.code or "" for recorded in begun]


def plain_rows(where: str) -> dict[str, Rows]:
    """Return the rows that the additions made, by table."""
    found = {}
    with sqlite3.connect(where) as connection:
        for table in ("entry", "add", "posting"):
            found[table] = connection.execute(
                f'SELECT * FROM "{table}" WHERE seq >= {FIRST} ORDER BY seq'
            ).fetchall()
    return found


def replay(where: str, rows: dict[str, Rows]) -> None:
    """Insert the same rows by plain SQL, one transaction an entry, same pragmas, no hash."""
    Path(where).unlink(missing_ok=True)
    connection = sqlite3.connect(where, isolation_level=None)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    for table, found in rows.items():
        columns = ", ".join(f"c{n}" for n in range(len(found[0])))
        connection.execute(f'CREATE TABLE "{table}" ({columns})')
    for number in range(len(rows["entry"])):
        connection.execute("BEGIN IMMEDIATE")
        for table, found in rows.items():
            marks = ", ".join("?" * len(found[number]))
            connection.execute(f'INSERT INTO "{table}" VALUES ({marks})', found[number])
        connection.execute("COMMIT")
    connection.close()


def copies_of(book: Book, folder: str, copies: int) -> Iterator[str]:
    """Return the paths of so many copies of a book."""
    places = [str(Path(folder) / f"copy{number}.db") for number in range(copies)]
    with closing(sqlite3.connect(book.where)) as kept:
        for place in places:
            with closing(sqlite3.connect(place)) as copy:
                kept.backup(copy)
    return iter(places)


def replay_in_book(where: str, entries: list[list[tuple[str, Rows]]]) -> None:
    """Insert the same rows into the tables of a book, one transaction an entry, without a hash."""
    connection = _opened(where)
    for entry in entries:
        connection.execute("BEGIN IMMEDIATE")
        for table, found in entry:
            marks = ", ".join("?" * len(found[0]))
            connection.executemany(f'INSERT INTO "{table}" VALUES ({marks})', found)
        connection.execute("COMMIT")
    connection.close()


def ask_in_book(
    where: str,
    told: Told,
    texts: Iterator[dict[str, object]],
    make: Callable[[list[Any]], object] = len,
) -> None:
    """Run statements in a book by the bare driver, and make and hash the text of each entry.

    Args:
        where: The book's file.
        told: The statements.
        texts: What the entries say.
        make: Is called with the rows of each answer.
    """
    connection = _opened(where)
    for statement, cells in told:
        if statement == "COMMIT":
            leaf_hash(canonical_text(next(texts)).encode())
        make(connection.execute(statement, cells).fetchall())
    connection.close()


def frozen(rows: list[Any]) -> object:
    """Return the rows of an answer as the frozen data that readers make of them."""
    if not rows:
        return ()
    if not str(rows[0][0]).startswith("{"):
        return tuple(map(_named(len(rows[0]))._make, rows))
    entries = tuple(kept_entry(body) for (body,) in rows)
    opened = entries[0].draft.opens
    return LotState(entries[0].seq, opened, entries, 0, 0) if opened else entries


@cache
def _named(width: int) -> Any:
    return namedtuple("Row", [f"c{place}" for place in range(width)])


def ask_and_make(where: str, told: Told, texts: Iterator[dict[str, object]]) -> None:
    """As `ask_in_book`, and make of what was read what the rules look at."""
    # The verb, too, reads every entry that is new for the first time.
    kept_entry.cache_clear()
    ask_in_book(where, told, texts, frozen)


def _opened(where: str) -> sqlite3.Connection:
    connection = sqlite3.connect(where, isolation_level=None)
    for pragma in ("foreign_keys = ON", "recursive_triggers = ON", "synchronous = FULL"):
        connection.execute(f"PRAGMA {pragma}")
    return connection


WORKS = (
    "the verb",
    "plain rows",
    "the book's tables",
    "the verb's statements",
    "and what the rules look at",
)
"""What is measured, in this order."""


def measured(additions: int, turns: int) -> list[list[float]]:
    """Return the least time of so many additions by each work, by the clock and of processor."""
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        book, oil, batches = book_in(folder)
        numbers = count()

        def append_all() -> None:
            for number in islice(numbers, additions):
                # As much again of the same in the same batch would be asked about.
                amount = f"{1 + number / 1000:.3f} mL"
                add(book, How(by="AB"), lot=batches[number % BATCHES], source=oil, amount=amount)

        copies = copies_of(book, folder, 3 * turns)
        told = heard(book, append_all)
        rows = plain_rows(book.where)
        texts = [json.loads(str(cells[-2])) for cells in rows["entry"]]
        entries = [rows_of(book.where, seq, seq) for seq in range(FIRST, FIRST + additions)]
        taken = best_by(
            [time.perf_counter, time.process_time],
            [
                append_all,
                lambda: replay(str(Path(folder) / "plain.db"), rows),
                lambda: replay_in_book(next(copies), entries),
                lambda: ask_in_book(next(copies), told, iter(texts)),
                lambda: ask_and_make(next(copies), told, iter(texts)),
            ],
            turns,
        )
        book.close()
    return taken


def main() -> None:
    """Print the ratios."""
    taken = measured(ENTRIES, TURNS)
    ours, plain, tables, floor, seen = (best for best, _ in taken)
    print(f"{ENTRIES / ours:.0f} additions a second through the verb; plain {ENTRIES / plain:.0f}")
    line("durable append through the verb / plain rows (rate)", plain / ours, "at least 0.45")
    line("   the same rows into the book's tables alone", plain / tables, "")
    line("   the verb's statements, text and hash, without rules", plain / floor, "(its floor)")
    line("   its floor with what the rules look at", plain / seen, "")
    said = zip(WORKS, taken, strict=True)
    told_ms = (f"{what} {spent / ENTRIES * 1e3:.2f}" for what, (_, spent) in said)
    print(f"Processor time of an addition, in ms: {', '.join(told_ms)}.")


if __name__ == "__main__":
    main()
