"""Books of any size in the shape of the trade, for benchmarks and for tests of many entries.

Guarantees: the same number of lots gives the same entries; every entry is made through its class
and put in by the store's bulk append, so `verify` finds the book sound; amounts never fall below
nothing. Memory does not grow with the book. Refuses: chance that is not seeded.

About half of the lots are packed, a third syrups, an eighth essences, the rest deliveries and rinse
liquors; 3.8 movements lead into a lot. A lot of spirit feeds near two thousand essences, one of
sugar two thousand syrups, an oil fifty essences: what is forward of a lot does not grow with the
book. ``python -m tests.benchmarks.books 10000 WHERE`` makes one; with `--used-up` nothing is left
of a batch when its turn is over.
"""

import sys
import time
from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, timedelta
from itertools import chain, islice
from pathlib import Path

from ledger.domain.entries import Entry
from ledger.service.desk.book import Book, How
from ledger.service.masters.house import init
from ledger.service.masters.material import material
from ledger.service.masters.person import person
from ledger.store.engine.connections import is_server
from tests.benchmarks.bulk import Bulk
from tests.benchmarks.season import Season

BEGUN = datetime(2016, 1, 4, 8, 0, tzinfo=UTC)
"""When the books are set up."""
SLICE = 100_000
"""How many entries are committed at once."""
MATERIALS = (
    ("oil", "Sweet orange oil", "oil", "0.845", None),
    ("lemon", "Lemon oil", "oil", "0.853", None),
    ("spirit", "Neutral spirit", "ethanol", None, "96"),
    ("carbonate", "Light magnesium carbonate", "clarifier", None, None),
    ("sugar", "White sugar", "sugar", None, None),
    ("water", "Water", "water", None, None),
    ("acid", "Citric acid", "acid", None, None),
    ("bottle", "Bottle 250 mL", "bottle", None, None),
    ("cap", "Cap 28 mm", "closure", None, None),
)


def empty_book(where: str) -> Book:
    """Make a book with its house, its two people and its materials."""
    book = init(where, name="Bench Cordials", currency="EUR", clock=lambda: BEGUN)
    how = How(by="AB")
    person(book, how, initials="AB", name="Ada Brook")
    person(book, how, initials="CD", name="Cora Dale")
    for code, name, kind, density, abv in MATERIALS:
        material(book, how, code=code, name=name, kind=kind, density=density, abv=abv)
    return book


def entries_of(
    lots: int, first: int = 4 + len(MATERIALS), *, is_used_up: bool = False
) -> Iterator[Entry]:
    """Yield the entries of so many lots, numbered from `first`, a minute from each to the next."""
    season = Season(first, BEGUN + timedelta(days=1), is_used_up=is_used_up)
    while season.lots < lots:
        yield from season.turn(lots)


def fill(book: Book, entries: Iterable[Entry]) -> int:
    """Put entries into a book, some at a time; return how many."""
    following, count = iter(entries), 0
    for first in following:
        with book.writing() as connection:
            count += Bulk(connection).append(chain([first], islice(following, SLICE - 1)))
    return count


def book_of(lots: int, where: str, *, is_used_up: bool = False) -> Book:
    """Make a book of so many lots; a server has counted its rows by then, as it does by itself."""
    book = empty_book(where)
    fill(book, entries_of(lots, is_used_up=is_used_up))
    if is_server(where):
        with book.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.exec_driver_sql("VACUUM ANALYZE")
    return book


def main() -> None:
    """Make a book of so many lots at a path or server, and say how long it took."""
    lots, where = int(sys.argv[1]), sys.argv[2]
    began = time.perf_counter()
    book = book_of(lots, where, is_used_up="--used-up" in sys.argv)
    taken = time.perf_counter() - began
    with book.reading() as connection:
        count = connection.exec_driver_sql("SELECT MAX(seq) FROM entry").scalar_one()
        made = connection.exec_driver_sql("SELECT COUNT(*) FROM lot").scalar_one()
        edges = connection.exec_driver_sql(
            "SELECT COUNT(*) FROM posting WHERE source IS NOT NULL AND target IS NOT NULL"
        ).scalar_one()
    book.close()
    size = f", {Path(where).stat().st_size / 1e6:,.0f} MB" if not is_server(where) else ""
    print(f"{made:,} lots, {count:,} entries, {edges / made:.2f} movements into a lot{size}")
    print(f"{taken:.0f} s, {count / taken:,.0f} entries a second")


if __name__ == "__main__":
    main()
