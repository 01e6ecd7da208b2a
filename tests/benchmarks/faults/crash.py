"""What is left when a command is killed, or the power, the disk, the file or the clock fails it.

``python -m tests.benchmarks.faults.crash [RUNS]`` tries every fault RUNS times (200 if not said)
and prints the table that stands in RESULTS.md. A run is a loss when the book does not open or does
not verify, has lost or changed an entry, or holds a command in part; when a user would have met
anything but a sentence; and when a file that was being made has its name and is not whole.

Each run is a fork of this process in which the command is already loaded, so that the kill meets
the work and not the start.
"""

import os
import random
import resource
import sqlite3
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from functools import cache, partial
from pathlib import Path

from ledger.service.bench.note import note
from ledger.service.desk.book import How, open_book
from ledger.store.engine import patience
from tests.benchmarks.desk import (
    COMMANDS,
    MAKERS,
    Desk,
    bodies,
    fork,
    made,
    moment,
    new_desk,
    outcome,
    reset,
    seconds,
    undisturbed,
)
from tests.benchmarks.faults.power import killed_at_writes, power_lost
from tests.benchmarks.faults.upgrades import upgrade, upgraded
from tests.keeper import SetClock
from tests.old_books import OLD_BOOKS

LIMITS = (0, 4_000_000, 5000, 20_000, 34_000, 40_000, 60_000, 90_000, 140_000, 250_000, 400_000)
"""Bytes beyond which a full disk lets no file grow; none of ours comes to the second."""
NOBODY = 65534


def killed(desk: Desk, runs: int) -> Counter[str]:
    """Kill commands that record, at any moment."""
    known = cache(lambda name: seconds(desk, COMMANDS[name]))
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        taken, whole = known(name)
        reset(desk)
        code = fork(desk, COMMANDS[name], kill_after=moment(desk, taken, number))
        found[outcome(desk, code, whole)] += 1
    return found


def killed_makers(desk: Desk, runs: int) -> Counter[str]:
    """Kill commands that make a file, at any moment."""
    known = cache(lambda name: undisturbed(desk, MAKERS[name]))
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(MAKERS))
        taken, whole = known(name)
        reset(desk)
        code = fork(desk, MAKERS[name], kill_after=moment(desk, taken, number))
        found[made(desk, code, whole)] += 1
    return found


def killed_upgrades(desk: Desk, runs: int) -> Counter[str]:
    """Kill an upgrade of every older form, each once at least, at any moment.

    Then the book is of the old form or of the new, a copy that has its name is whole, and who
    upgrades again with what was left there comes to the end.
    """
    old, found = desk.folder / "old.db", Counter[str]()
    taken = 0.0
    for number in range(max(runs, len(OLD_BOOKS))):
        book = OLD_BOOKS[number % len(OLD_BOOKS)]
        old.unlink(missing_ok=True)
        book.put(old)
        if not taken:
            taken = upgrade(desk, old, None)[0]
        upgrade(desk, old, moment(desk, taken, number))
        found[upgraded(desk, bodies(old), book.version)] += 1
    return found


def starved(desk: Desk, args: tuple[str, ...], number: int) -> int:
    """Run a command while no file may grow beyond a size; return its exit code."""
    most = LIMITS[number % len(LIMITS)] + desk.dice.randrange(4096)
    reset(desk)
    return fork(desk, args, partial(resource.setrlimit, resource.RLIMIT_FSIZE, (most, most)))


def full_disk(desk: Desk, runs: int) -> Counter[str]:
    """Let the disk be full while commands record."""
    known = cache(lambda name: seconds(desk, COMMANDS[name])[1])
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        whole = known(name)
        found[outcome(desk, starved(desk, COMMANDS[name], number), whole)] += 1
    return found


def full_disk_makers(desk: Desk, runs: int) -> Counter[str]:
    """Let the disk be full while a file is made."""
    known = cache(lambda name: undisturbed(desk, MAKERS[name])[1])
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(MAKERS))
        whole = known(name)
        found[made(desk, starved(desk, MAKERS[name], number), whole)] += 1
    return found


def read_only(desk: Desk, runs: int) -> Counter[str]:
    """Take the right to write away from the file and its folder."""
    found: Counter[str] = Counter()
    for _ in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        reset(desk)
        desk.book.chmod(0o444)
        desk.folder.chmod(0o555)
        code = fork(desk, COMMANDS[name], become_nobody)
        desk.folder.chmod(0o755)
        desk.book.chmod(0o600)
        found["loss" if code != 5 else outcome(desk, code, ())] += 1
    return found


def become_nobody() -> None:
    """Give up the rights of a superuser, whom no mode of a file binds."""
    if os.geteuid() == 0:
        os.setuid(NOBODY)


def locked(desk: Desk, runs: int) -> Counter[str]:
    """Hold the book for longer than a writer waits, which is cut short here."""
    found: Counter[str] = Counter()
    for _ in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        reset(desk)
        with closing(sqlite3.connect(desk.book, isolation_level=None)) as client:
            client.execute("BEGIN IMMEDIATE")
            code = fork(desk, COMMANDS[name], lambda: setattr(patience, "BUSY_MS", 20))
        found["loss" if code != 5 else outcome(desk, code, ())] += 1
    return found


def clock_set_back(desk: Desk, runs: int) -> Counter[str]:
    """Write with a clock that is years behind, between others that are right."""
    found: Counter[str] = Counter()
    for number in range(runs):
        reset(desk)
        before = len(bodies(desk.book))
        behind = datetime(desk.dice.randrange(1990, 2026), 1, 1, tzinfo=UTC)
        book = open_book(str(desk.book), SetClock(behind))
        note(book, How(by="AB", because="the clock is right"), text=f"Note {number}.")
        book.close()
        found[outcome(desk, 0, bodies(desk.book)[before:])] += 1
    return found


FAULTS: dict[str, Callable[[Desk, int], Counter[str]]] = {
    "killed while recording": killed,
    "killed while making a file": killed_makers,
    "killed while upgrading": killed_upgrades,
    "killed at a write, torn": killed_at_writes,
    "power lost": power_lost,
    "disk full while recording": full_disk,
    "disk full while making a file": full_disk_makers,
    "file and folder read-only": read_only,
    "file locked by another": locked,
    "clock set back": clock_set_back,
}
"""What each fault is called in the table."""


def main(runs: int, seed: int) -> int:
    """Try every fault and print the table; return how many runs were losses."""
    losses = 0
    print(f"{'fault':<32}{'runs':>7}{'whole':>7}{'nothing':>9}{'losses':>8}")
    with tempfile.TemporaryDirectory() as name:
        desk = new_desk(Path(name), random.Random(seed))
        for fault, try_it in FAULTS.items():
            found = try_it(desk, runs)
            losses += found["loss"]
            print(
                f"{fault:<32}{found.total():>7}{found['whole']:>7}{found['nothing']:>9}{found['loss']:>8}",
                flush=True,
            )
    return losses


if __name__ == "__main__":
    sys.exit(bool(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200, seed=20260302)))
