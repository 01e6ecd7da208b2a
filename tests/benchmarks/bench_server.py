"""How often an addition waits for a server that is far away, and how many a second are recorded.

``python -m tests.benchmarks.bench_server [SECONDS]`` lays a line with a delay of 20 ms and one of
80 ms to a PostgreSQL of its own, counts the round trips of one addition, connecting apart, and lets
1, 4 and 8 processes add for so long (10 s if not said), each twentieth entry being a new batch. It
fails where a writer was told an error, an entry is lost, or the book does not verify.
"""

import json
import subprocess
import sys
import tempfile
import time
from itertools import count
from pathlib import Path
from subprocess import PIPE

from ledger.service.bench.add import add
from ledger.service.bench.receive import receive
from ledger.service.bench.start import start
from ledger.service.desk.book import Book, How, Recorded, open_book
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import init
from ledger.service.masters.material import material
from ledger.service.masters.person import person
from tests.benchmarks.ratios import line
from tests.benchmarks.slow_line import SlowLine, slow_line, through
from tests.conftest import Server, running_server

DELAYS_MS, WRITERS = {20: 15, 80: 4}, (1, 4, 8)
"""The delays, each with the entries a second that it is to allow; and the crowds."""
MOST_TRIPS = 3
OF_A_BATCH = 20


def book_at(where: str) -> str:
    """Make a book with a delivery of oil and return the code of its lot."""
    how = How(by="AB")
    with init(where, name="Bench", currency="EUR") as book:
        person(book, how, initials="AB", name="Ada Brook")
        material(book, how, code="oil", kind="oil")
        return receive(book, how, material="oil", amount="1000 L").code or ""


def batch(book: Book) -> str:
    """Begin a batch and return its code."""
    return begin(book).code or ""


def begin(book: Book) -> Recorded:
    """Begin a batch."""
    return start(book, How(by="AB"), product="Essence", kind="essence", target="5 L")


def write(where: str, oil: str) -> None:
    """Get ready, be told until when to add, and print what was recorded, and how much in time."""
    numbers: list[int] = []
    in_time = 0
    with open_book(where) as book:
        lot = batch(book)
        print("ready", flush=True)
        until = float(input())
        for number in count(1):
            if time.time() >= until:
                break
            if number % OF_A_BATCH == 0:
                begun = begin(book)
                lot, numbers = begun.code or "", [*numbers, begun.seq]
            else:
                amount = f"{1 + number / 1000:.3f} mL"
                numbers.append(add(book, How(by="AB"), lot=lot, source=oil, amount=amount).seq)
            in_time += time.time() < until
    print(json.dumps({"numbers": numbers, "in_time": in_time}))


def entries(where: str, oil: str, writers: int, seconds: float) -> int:
    """Let so many processes write, and return how many entries they were told are recorded."""
    code = f"from tests.benchmarks.bench_server import write; write({where!r}, {oil!r})"
    started = [
        subprocess.Popen([sys.executable, "-c", code], stdin=PIPE, stdout=PIPE, text=True)
        for _ in range(writers)
    ]
    for one in started:
        assert one.stdout is not None
        assert one.stdout.readline() == "ready\n"
    until = time.time() + seconds
    for one in started:
        assert one.stdin is not None
        print(until, file=one.stdin, flush=True)
    told = [json.loads(one.communicate()[0]) for one in started]
    assert all(one.returncode == 0 for one in started)
    numbers = [number for one in told for number in one["numbers"]]
    assert len(numbers) == len(set(numbers))
    return sum(one["in_time"] for one in told)


def trips_of_one(where: str, oil: str, laid: SlowLine) -> int:
    """Return the round trips of an addition to a batch with something in it."""
    with open_book(where) as book:
        lot = batch(book)
        add(book, How(by="AB"), lot=lot, source=oil, amount="1 mL")
        before = laid.trips
        add(book, How(by="AB"), lot=lot, source=oil, amount="2 mL")
        return laid.trips - before


def measure(server: Server, delay_ms: int, seconds: float) -> None:
    """Print what is found at one delay."""
    with slow_line(server, delay_ms / 1000) as laid:
        straight = server.where(server.new_database())
        oil = book_at(straight)
        where = through(laid, straight)
        trips = trips_of_one(where, oil, laid)
        line(f"{delay_ms} ms: round trips of one addition", trips, f"at most {MOST_TRIPS}")
        for writers in WRITERS:
            found = entries(where, oil, writers, seconds) / seconds
            goal = f"at least {DELAYS_MS[delay_ms]}"
            line(f"{delay_ms} ms: entries a second, {writers} writing", found, goal)
    with open_book(straight) as book:
        assert verify(book).faults == ()


def main(seconds: float) -> None:
    """Print the table."""
    with (
        tempfile.TemporaryDirectory(prefix="pottle-") as folder,
        running_server(Path(folder), is_durable=True) as server,
    ):
        for delay_ms in DELAYS_MS:
            measure(server, delay_ms, seconds)


if __name__ == "__main__":
    main(float(sys.argv[1]) if len(sys.argv) > 1 else 10)
