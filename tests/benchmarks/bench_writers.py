"""How many entries two writers together append, against one alone; each a process of its own.

``--server``: on PostgreSQL, durably; else on one SQLite file.
"""

import argparse
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from ledger.service.bench.note import note
from ledger.service.bench.start import start
from ledger.service.desk.book import Book, How, open_book
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import init
from ledger.service.masters.person import person
from tests.benchmarks.ratios import line
from tests.conftest import running_server

ENTRIES = 200
ROUNDS = 3
CROWDS = (1, 2, 4)


def book_at(where: str) -> None:
    """Make a book with a batch to write about."""
    book = init(where, name="Bench", currency="EUR")
    person(book, How(by="AB"), initials="AB", name="Ada Brook")
    start(book, How(by="AB"), product="Essence", kind="essence", target="5 L", code="E-1")
    book.close()


def write(where: str) -> None:
    """Write as many notes as one writer writes, once a line arrives to say so."""
    book = open_book(where)
    print("ready", flush=True)
    sys.stdin.readline()
    for number in range(ENTRIES):
        note(book, How(by="AB"), text=f"Note {number}.")
    book.close()


def rate(where: str, writers: int) -> float:
    """Return how many entries a second so many writers append together."""
    command = [sys.executable, "-m", "tests.benchmarks.bench_writers", "--write", where]
    running = [
        subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        for _ in range(writers)
    ]
    for process in running:
        assert process.stdout is not None
        process.stdout.readline()
    began = time.perf_counter()
    for process in running:
        assert process.stdin is not None
        process.stdin.write("go\n")
        process.stdin.flush()
    for process in running:
        process.communicate()
        assert process.returncode == 0
    return writers * ENTRIES / (time.perf_counter() - began)


def measure(where: str) -> None:
    """Print the ratios for one book, and look whether it is sound."""
    book_at(where)
    rates = dict.fromkeys(CROWDS, 0.0)
    for _ in range(ROUNDS):
        for writers in CROWDS:
            rates[writers] = max(rates[writers], rate(where, writers))
    with Book(where) as book:
        assert verify(book).faults == ()
    print(", ".join(f"{writers} writers {found:.0f}/s" for writers, found in rates.items()))
    for writers in CROWDS[1:]:
        line(f"{writers} writers together / one alone", rates[writers] / rates[1], "at least 0.9")


def main() -> None:
    """Measure, or write for another who measures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--write")
    parser.add_argument("--server", action="store_true")
    told = parser.parse_args()
    if told.write:
        write(told.write)
        return
    with tempfile.TemporaryDirectory(prefix="pottle-") as folder:
        if not told.server:
            measure(str(Path(folder) / "book.db"))
            return
        with running_server(Path(folder), is_durable=True) as server:
            measure(server.where(server.new_database()))


if __name__ == "__main__":
    main()
