"""How fast a book is verified, against hashing the same bytes read from the same table."""

import sqlite3
import tempfile
from contextlib import closing
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

from ledger.domain.entries import Add, Look, Posting
from ledger.domain.entries.spine import Draft, When
from ledger.domain.entries.words import Grade, LookedAt
from ledger.domain.quantity import Measure, Quantity
from ledger.service.batches import start
from ledger.service.book import Book, How
from ledger.service.receiving import receive
from ledger.service.setting_up import init, material, person
from ledger.service.verifying import verify
from ledger.store import recorder
from tests.benchmarks.ratios import line, seconds_of

ENTRIES = 10_000


def book_in(folder: str) -> Book:
    """Return a book of so many entries, additions and looks by turns."""
    book = init(str(Path(folder) / "pottle.db"), name="Bench", currency="EUR")
    how = How(by="AB")
    person(book, how, initials="AB", name="Ada Brook")
    material(book, how, code="oil", kind="oil")
    oil = receive(book, how, material="oil", amount="1000 L").code or ""
    lot = start(book, how, product="Essence", kind="essence", target="5 L").code or ""
    now = datetime.now(UTC).replace(microsecond=0)
    with book.writing() as connection:
        for number in range(ENTRIES):
            at = now + timedelta(seconds=number)
            addition = Add(oil, Quantity(1000 + number, Measure.UL, f"{1000 + number} µL"))
            look = Look(Grade.CLEAR, LookedAt.NEAT, words="pale gold, fresh peel")
            posting = Posting(oil, lot, None, 1000 + number, 1000 + number)
            draft = Draft(look if number % 2 else addition, lot, When(at, 0), "AB")
            recorder.append(connection, draft, (() if number % 2 else (posting,), None), at)
    return book


def hash_all(where: str) -> None:
    """Hash every text, one after the other."""
    with closing(sqlite3.connect(where)) as connection:
        for (body,) in connection.execute("SELECT body FROM entry ORDER BY seq"):
            sha256(b"\x00" + body.encode()).digest()


def main() -> None:
    """Print the ratio and the rates."""
    with tempfile.TemporaryDirectory() as folder:
        book = book_in(folder)
        assert verify(book).faults == ()
        verified = seconds_of(lambda: verify(book))
        hashed = seconds_of(lambda: hash_all(book.where))
        book.engine.dispose()
    line("verify / hashing the same texts", hashed / verified, "at least 0.5")
    print(f"{ENTRIES / verified:,.0f} entries a second verified, {ENTRIES / hashed:,.0f} hashed")


if __name__ == "__main__":
    main()
