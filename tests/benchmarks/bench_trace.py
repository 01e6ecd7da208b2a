"""How fast a lot is traced in books of three sizes, against the bare recursive query.

``python -m tests.benchmarks.bench_trace``; with ``--server`` on PostgreSQL, with ``--in FOLDER`` on
books kept there and made where missing, with numbers of lots in books of those sizes. The walk is
what is compared: which lots, by postings in force only. What a trace then says of each lot (how far
it is, status, amount, look, who has it) is told as a time a lot, which must not grow either.
"""

import argparse
import tempfile
import time
import tracemalloc
from collections.abc import Callable
from functools import partial
from pathlib import Path

from sqlalchemy import Connection, text

from ledger.errors import StorageError
from ledger.service.desk.book import Book, open_book
from ledger.service.lots.trace import trace_on
from ledger.store.engine.connections import is_server
from ledger.store.engine.statements import ask
from ledger.store.read import walk
from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import best_seconds, line
from tests.conftest import running_server

SIZES = (10_000, 100_000, 1_000_000)
ROUNDS = 40
_BARE = """
    WITH RECURSIVE walk(lot) AS (
        SELECT CAST(:lot AS BIGINT)
        UNION
        SELECT p.{to} FROM walk JOIN posting p ON p.{fro} = walk.lot WHERE p.{to} IS NOT NULL)
    SELECT lot FROM walk"""
BARE = {
    "back": _BARE.format(to="source", fro="target"),
    "forward": _BARE.format(to="target", fro="source"),
}
WALKS: dict[str, Callable[[Connection, int], list[int]]] = {
    "back": walk.back,
    "forward": walk.forward,
}


def lots_to_trace(connection: Connection) -> dict[str, tuple[str, list[int]]]:
    """Return, by name, which way to walk and from which lots: from all over the book."""
    oil = lots_with(connection, "SOO-%")
    packed = lots_with(connection, "BOS-%")
    spirit = lots_with(connection, "NS-%")
    return {
        "bottles back": ("back", packed[:: max(len(packed) // 60, 1)]),
        "oils forward": ("forward", oil[1:-1][-6:]),
        "spirit forward": ("forward", spirit[:1]),
    }


def lots_with(connection: Connection, pattern: str) -> list[int]:
    query = text("SELECT id FROM lot WHERE code LIKE :pattern ORDER BY id")
    return list(connection.execute(query, {"pattern": pattern}).scalars())


def measure(book: Book, lots: int, known: dict[str, tuple[float, float]]) -> None:
    """Print how long the walks of one book take, and compare them with the smallest book's."""
    clock = time.perf_counter if is_server(book.where) else time.process_time
    with book.reading() as connection:
        for name, (way, starts) in lots_to_trace(connection).items():
            met = sum(len(WALKS[way](connection, lot)) for lot in starts)
            plain, walk_time = best_seconds(
                [partial(bare, connection, way, starts), partial(walked, connection, way, starts)],
                ROUNDS,
                clock,
            )
            (trace_time,) = best_seconds([partial(told, connection, way, starts)], 8, clock)
            row, row_told = walk_time / met * 1e6, trace_time / met * 1e6
            print(f"{lots:>9,} lots, {name}: {met:,} met, {row:.1f} µs a lot, {row_told:.0f} told")
            line(f"{lots:,} lots, {name}: walk / bare query", walk_time / plain, "at most 1.3")
            first, first_told = known.setdefault(name, (row, row_told))
            line("   a lot walked / in the smallest book", row / first, "at most 1.5")
            line("   a lot told / in the smallest book", row_told / first_told, "at most 1.5")


def bare(connection: Connection, way: str, starts: list[int]) -> None:
    """Run the bare recursive query from each lot."""
    for lot in starts:
        ask(connection, BARE[way], lot=lot)


def walked(connection: Connection, way: str, starts: list[int]) -> None:
    """Walk from each lot."""
    for lot in starts:
        WALKS[way](connection, lot)


def told(connection: Connection, way: str, starts: list[int]) -> None:
    """Trace each lot, with all that a trace says."""
    for lot in starts:
        code = code_of(connection, lot)
        trace_on(connection, code, back=way == "back", forward=way == "forward")


def code_of(connection: Connection, lot: int) -> str:
    found = connection.execute(text("SELECT code FROM lot WHERE id = :lot"), {"lot": lot})
    return str(found.scalar_one())


def memory_mb(book: Book) -> float:
    """Return the most memory that Python holds while the widest lot is traced forward."""
    with book.reading() as connection:
        (lot, *_) = lots_with(connection, "NS-%")
        tracemalloc.start()
        trace_on(connection, code_of(connection, lot), back=False)
        _, most = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    return most / 1e6


def main() -> None:
    """Print the ratios of every size."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("sizes", nargs="*", type=int, default=list(SIZES))
    parser.add_argument("--server", action="store_true")
    parser.add_argument("--in", dest="folder", type=Path)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pottle-") as made:
        folder = told.folder or Path(made)
        if not told.server:
            measure_all({lots: str(folder / f"{lots}.db") for lots in told.sizes})
            return
        with running_server(folder, is_durable=True) as server:
            found = {lots: server.where(f"book{lots}") for lots in told.sizes}
            for lots in told.sizes:
                if f"book{lots}" not in server.databases():
                    server.run("CREATE DATABASE {}", f"book{lots}")
            measure_all(found)


def measure_all(places: dict[int, str]) -> None:
    """Measure books of several sizes, the smallest first; a missing book is made."""
    known: dict[str, tuple[float, float]] = {}
    for lots, where in sorted(places.items()):
        book = opened_or_made(lots, where)
        measure(book, lots, known)
        print(f"{lots:>9,} lots: at most {memory_mb(book):,.0f} MB while the spirit is traced")
        book.close()


def opened_or_made(lots: int, where: str) -> Book:
    """Open the book at a place; make it if there is none."""
    try:
        return open_book(where)
    except StorageError:
        return book_of(lots, where)


if __name__ == "__main__":
    main()
