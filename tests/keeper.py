"""A book in a test: its clock is set by hand and its verbs are called by name."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from types import TracebackType
from typing import Self

from ledger.domain.entries import Entry
from ledger.domain.entries.plain import read_entry
from ledger.domain.entries.spine import Facts
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.store.engine.connections import Connection
from ledger.store.engine.statements import ask, ask_one
from ledger.store.form.tables import METADATA
from ledger.store.read import amounts, queries

SET_UP = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)
"""When the books of the tests are made: a Monday morning, in winter time."""
MORNING = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
"""When the clock of every test begins."""
LATER = datetime(2026, 3, 9, 9, 0, tzinfo=UTC)
"""When it begins in tests of a book with a season in it."""


@dataclass(slots=True)
class SetClock:
    """A clock that goes only when it is told to."""

    now: datetime = MORNING

    def __call__(self) -> datetime:
        return self.now

    def forward(self, **span: float) -> None:
        self.now += timedelta(**span)


@dataclass(slots=True)
class Keeper:
    """Somebody who keeps a book, five minutes from entry to entry."""

    book: Book
    clock: SetClock
    by: str | None = "AB"
    minutes_apart: int = 5
    codes: dict[str, str] = field(default_factory=dict)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.book.close()

    def do(
        self,
        verb: str,
        *,
        at: str | None = None,
        because: str | None = None,
        origin: str | None = None,
        sheet: str | None = None,
        **words: object,
    ) -> Recorded:
        self.clock.forward(minutes=self.minutes_apart)
        return VERBS[verb](self.book, How(self.by, at, because, origin, sheet), **words)

    def opens(self, verb: str, **words: str) -> str:
        code = self.do(verb, **words).code
        assert code is not None
        return code

    def record(self, facts: Facts, lot: str | None = None) -> Recorded:
        self.clock.forward(minutes=self.minutes_apart)
        with at_desk(self.book, How(self.by)) as desk:
            return desk.record(facts, lot)

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        with self.book.reading() as connection:
            yield connection

    def entries(self) -> list[Entry]:
        return [read_entry(body) for _, body in self.bodies()]

    def bodies(self) -> list[tuple[int, str]]:
        with self.reading() as connection:
            return ask(connection, "SELECT seq, body FROM entry ORDER BY seq")

    def entry(self, seq: int) -> Entry:
        with self.reading() as connection:
            found = queries.entry(connection, seq)
        assert found is not None
        return found

    def on_hand(self, code: str) -> int:
        """Return what the view on_hand says of a lot."""
        query = "SELECT amount FROM on_hand WHERE code = :code"
        with self.reading() as connection:
            return int(ask_one(connection, query, code=code))

    def held(self, code: str) -> int:
        """Return what the reckoning for rules says of a lot."""
        with self.reading() as connection:
            lot = queries.lot_by_code(connection, code)
            assert lot is not None
            return amounts.held(connection, lot.seq).amount

    def lot_codes(self) -> list[str]:
        with self.reading() as connection:
            return list(queries.all_codes(connection))


def row_counts(book: Book) -> dict[str, int]:
    """Return how many rows each table of the book has."""
    with book.reading() as connection:
        return {
            name: int(ask_one(connection, f'SELECT COUNT(*) FROM "{name}"'))
            for name in METADATA.tables
        }


def copy_book(source: Path, target: Path) -> Path:
    """Copy a closed book's file; what SQLite has not written back yet comes too."""
    if not source.with_name(f"{source.name}-wal").exists():
        return Path(shutil.copyfile(source, target))
    with closing(sqlite3.connect(source)) as old, closing(sqlite3.connect(target)) as new:
        old.backup(new)
    return target


def silent(done: int, total: int) -> None:
    """Take no notice of progress."""
