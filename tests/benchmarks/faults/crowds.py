"""Whether a book stays whole while several processes write in it at once, and how fast it then is.

``python -m tests.benchmarks.faults.crowds [SECONDS]`` lets 1, 2, 4 and 8 processes write notes for
so long (10 s if not said) on one SQLite file and on one PostgreSQL, and prints the table that
stands in RESULTS.md. A loss is an entry that a writer was told is recorded and that the book has
not, a gap in the numbers, or anything that verifying finds; an error is what a user would have
seen.
"""

import json
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from subprocess import PIPE

from ledger.service.desk.book import How
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import init
from ledger.service.masters.person import person
from tests.conftest import passing_server
from tests.keeper import Keeper, SetClock

WRITERS = (1, 2, 4, 8)


@dataclass(frozen=True, slots=True)
class Crowd:
    """What became of a crowd of writers."""

    writers: int
    """How many there were."""
    entries: int
    """How many entries they were told are recorded."""
    seconds: float
    """How long they wrote."""
    errors: int
    """How many errors they were told of."""
    losses: int
    """How many entries are lost or wrong."""


def crowd(where: str, writers: int, seconds: float) -> Crowd:
    """Let so many processes write in a book, and look what became of it."""
    book = init(where, name="Crowd", currency="EUR")
    person(book, How(by="AB"), initials="AB", name="Ada Brook")
    code = f"from tests.benchmarks.faults.writer import write; write({where!r})"
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
    numbers = sorted(number for one in told for number in one["numbers"])
    kept = [seq for seq, _ in Keeper(book, SetClock()).bodies()]
    losses = len(set(numbers) ^ set(kept[2:])) + len(numbers) - len(set(numbers))
    losses += sum(one != place for place, one in enumerate(kept, start=1))
    losses += len(verify(book).faults)
    book.close()
    return Crowd(writers, len(numbers), seconds, sum(one["errors"] for one in told), losses)


def report(what: str, found: list[Crowd]) -> int:
    """Print a line for each crowd; return how many losses and errors there were."""
    alone = found[0].entries or 1
    for one in found:
        print(
            f"{what:<12}{one.writers:>8}{one.entries:>9}{one.entries / alone:>15.2f}"
            f"{one.errors:>8}{one.losses:>8}",
            flush=True,
        )
    return sum(one.errors + one.losses for one in found)


def main(seconds: float, writers: tuple[int, ...] = WRITERS) -> int:
    """Print the table; return how many losses and errors there were."""
    print(
        f"{'engine':<12}{'writers':>8}{'entries':>9}{'against first':>15}{'errors':>8}{'losses':>8}"
    )
    with tempfile.TemporaryDirectory() as folder:
        files = [crowd(str(Path(folder) / f"{one}.db"), one, seconds) for one in writers]
    bad = report("SQLite", files)
    with passing_server() as server:
        places = [(server.where(server.new_database()), one) for one in writers]
        return bad + report("PostgreSQL", [crowd(*place, seconds) for place in places])


if __name__ == "__main__":
    sys.exit(bool(main(float(sys.argv[1]) if len(sys.argv) > 1 else 10)))
