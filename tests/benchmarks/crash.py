"""What is left when a command is killed, or the disk, the file or the clock fails it.

``python -m tests.benchmarks.crash [RUNS]`` tries every fault RUNS times (200 if not said) and
prints the table that stands in DEVELOPERS.md. A run is a loss when the book does not open or does
not verify, has lost or changed an entry, or holds a command in part; when a user would have met
anything but a sentence; and when a file that was being made has its name and is not whole.

Each run is a fork of this process in which the command is already loaded, so that the kill meets
the work and not the start.
"""

import os
import random
import resource
import signal
import sqlite3
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from typer.testing import CliRunner

from cli.main import app
from ledger.errors import LedgerError
from ledger.service import verifying
from ledger.service.batches import add, start
from ledger.service.book import How, open_book
from ledger.service.copying import import_book
from ledger.service.keeping import note
from ledger.service.receiving import receive
from ledger.service.setting_up import init, material, person
from ledger.store import engine
from tests.keeper import SetClock, copy_book

V1 = Path(__file__).parents[1] / "migrations" / "v1.sql"
COMMANDS: dict[str, tuple[str, ...]] = {
    "note": ("note", "-", "Some words."),
    "receive": ("receive", "spirit", "5L"),
    "start": ("start", "--product", "Essence", "--kind", "essence", "--target", "1L"),
    "add, with a deviation": ("add", ".", "NS-001-J", "90L", "--because", "it was there"),
    "correct": ("correct", "6", "--set", "amount=20mL", "--because", "misread"),
    "strike": ("strike", "6", "--because", "mistake"),
}
"""Commands that record, on the book that `new_book` makes."""
MAKERS: dict[str, tuple[str, ...]] = {
    "backup": ("backup", "out"),
    "export": ("export", "out/book.jsonl"),
    "init": ("init", "--house", "Wren", "--currency", "EUR", "--ledger", "out/new.db"),
    "import": ("import", "--book", "whole.jsonl", "--ledger", "out/new.db"),
    "restore": ("restore", "whole.jsonl", "--to", "out/new.db"),
}
"""Commands that make files, in the folder `out`."""
LIMITS = (0, 5000, 20_000, 34_000, 40_000, 60_000, 90_000, 140_000, 250_000, 400_000)
"""Sizes in bytes at which a full disk stops a file from growing."""
NOBODY = 65534


@dataclass(frozen=True, slots=True)
class Desk:
    """A folder in which the runs take place."""

    folder: Path
    """Where it is."""
    before: tuple[str, ...]
    """The texts of the book's entries before a run."""
    dice: random.Random
    """What chooses moments and commands."""

    @property
    def book(self) -> Path:
        """The book of a run."""
        return self.folder / "pottle.db"


def new_book(where: str) -> None:
    """Make a book in which every command of `COMMANDS` can be run."""
    book = init(where, name="Wren", currency="EUR")
    how = How(by="AB")
    person(book, how, initials="AB", name="Ada Brook")
    material(book, how, code="spirit", name="Neutral spirit", kind="ethanol")
    oil = receive(book, how, material="spirit", amount="5L").code or ""
    batch = start(book, how, product="Essence", kind="essence", target="1L").code or ""
    add(book, how, lot=batch, source=oil, amount="30mL")
    book.engine.dispose()


def bodies(where: Path) -> tuple[str, ...]:
    """Return the texts of a book's entries."""
    with closing(sqlite3.connect(where)) as client:
        return tuple(row[0] for row in client.execute("SELECT body FROM entry ORDER BY seq"))


def run_command(desk: Desk, args: tuple[str, ...], first: Callable[[], object]) -> None:
    """Run a command in a child of this process, and end the child with its exit code."""
    os.chdir(desk.folder)
    code = 70
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        first()
        os.environ.update(POTTLE_LEDGER=str(desk.book), POTTLE_BY="AB")
        code = app(list(args), standalone_mode=False) or 0
    finally:
        os._exit(code)


def fork(
    desk: Desk,
    args: tuple[str, ...],
    first: Callable[[], object] = lambda: None,
    kill_after: float | None = None,
) -> int:
    """Run a command in a fork; return its exit code, below zero when it was killed."""
    child = os.fork()
    if not child:
        run_command(desk, args, first)
    if kill_after is not None:
        time.sleep(kill_after)
        os.kill(child, signal.SIGKILL)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def reset(desk: Desk) -> None:
    """Put the book back as it was before every run."""
    for path in (*desk.folder.glob("pottle.db*"), *(desk.folder / "out").glob("*")):
        path.unlink()
    for path in (desk.folder / "out").glob(".*"):
        path.unlink()
    copy_book(desk.folder / "whole.db", desk.book)


def is_sound(where: Path) -> bool:
    """Return whether a file is a book that opens and verifies."""
    try:
        book = open_book(str(where))
        found = verifying.verify(book)
        book.engine.dispose()
    except LedgerError:
        return False
    return not found.faults


def outcome(desk: Desk, code: int, whole: int) -> str:
    """Return what a run left: `whole`, `nothing` or `loss`.

    Args:
        desk: Where it took place.
        code: Its exit code.
        whole: How many entries the command records.
    """
    if code not in (0, 5, -signal.SIGKILL) or not is_sound(desk.book):
        return "loss"
    after = bodies(desk.book)
    added = len(after) - len(desk.before)
    if after[: len(desk.before)] != desk.before or added not in (0, whole):
        return "loss"
    if (code == 0 and not added) or (code == 5 and added):
        return "loss"
    return "whole" if added else "nothing"


def made(desk: Desk, code: int) -> str:
    """Return what a run that makes a file left: `whole`, `nothing` or `loss`."""
    named = [path for path in (desk.folder / "out").iterdir() if path.suffix != ".part"]
    books = [path for path in named if path.suffix == ".db"]
    if code not in (0, 5, -signal.SIGKILL) or not is_sound(desk.book):
        return "loss"
    for path in named:
        if path.suffix == ".jsonl":
            again = desk.folder / "again.db"
            again.unlink(missing_ok=True)
            try:
                import_book(path, str(again), lambda done, total: None)
            except LedgerError:
                return "loss"
    return "loss" if not all(map(is_sound, books)) else "whole" if named else "nothing"


def seconds(desk: Desk, args: tuple[str, ...]) -> tuple[float, int]:
    """Return how long a command takes when nothing stops it, and how many entries it adds."""
    reset(desk)
    began = time.perf_counter()
    code = fork(desk, args)
    taken = time.perf_counter() - began
    assert code == 0, (args, code)
    return taken, len(bodies(desk.book)) - len(desk.before)


def killed(desk: Desk, runs: int) -> Counter[str]:
    """Kill commands that record, at any moment."""
    known = {name: seconds(desk, args) for name, args in COMMANDS.items()}
    found: Counter[str] = Counter()
    for _ in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        taken, whole = known[name]
        reset(desk)
        code = fork(desk, COMMANDS[name], kill_after=desk.dice.uniform(0, taken * 1.2))
        found[outcome(desk, code, whole)] += 1
    return found


def killed_makers(desk: Desk, runs: int) -> Counter[str]:
    """Kill commands that make a file, at any moment."""
    known = {name: seconds(desk, args)[0] for name, args in MAKERS.items()}
    found: Counter[str] = Counter()
    for _ in range(runs):
        name = desk.dice.choice(list(MAKERS))
        reset(desk)
        code = fork(desk, MAKERS[name], kill_after=desk.dice.uniform(0, known[name] * 1.2))
        found[made(desk, code)] += 1
    return found


def killed_upgrades(desk: Desk, runs: int) -> Counter[str]:
    """Kill an upgrade, at any moment; then the book is of the old form or of the new."""
    args = ("upgrade", "--keep-in", "out")
    old = desk.folder / "old.db"
    with closing(sqlite3.connect(old)) as client:
        client.executescript(V1.read_text(encoding="utf-8"))
    texts, found, taken = bodies(old), Counter[str](), 0.0
    for number in range(runs + 1):
        reset(desk)
        desk.book.unlink()
        copy_book(old, desk.book)
        began = time.perf_counter()
        fork(desk, args, kill_after=desk.dice.uniform(0, taken * 1.2) if number else None)
        taken = taken or time.perf_counter() - began
        is_new = is_sound(desk.book)
        for path in (desk.folder / "out").iterdir():
            path.unlink()
        fits = bodies(desk.book) == texts and fork(desk, args) == 0 and is_sound(desk.book)
        if number:
            found["loss" if not fits else "whole" if is_new else "nothing"] += 1
    return found


def full_disk(desk: Desk, runs: int) -> Counter[str]:
    """Let no file grow beyond a size."""
    known = {name: seconds(desk, args)[1] for name, args in COMMANDS.items()}
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(COMMANDS))
        most = LIMITS[number % len(LIMITS)] + desk.dice.randrange(4096)
        reset(desk)
        code = fork(
            desk,
            COMMANDS[name],
            partial(resource.setrlimit, resource.RLIMIT_FSIZE, (most, most)),
        )
        found[outcome(desk, code, known[name])] += 1
    return found


def full_disk_makers(desk: Desk, runs: int) -> Counter[str]:
    """Let no file grow beyond a size while one is made."""
    found: Counter[str] = Counter()
    for number in range(runs):
        name = desk.dice.choice(list(MAKERS))
        most = LIMITS[number % len(LIMITS)] + desk.dice.randrange(4096)
        reset(desk)
        code = fork(
            desk,
            MAKERS[name],
            partial(resource.setrlimit, resource.RLIMIT_FSIZE, (most, most)),
        )
        found[made(desk, code)] += 1
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
        found["loss" if code != 5 else outcome(desk, code, 0)] += 1
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
            code = fork(desk, COMMANDS[name], lambda: setattr(engine, "BUSY_MS", 20))
        found["loss" if code != 5 else outcome(desk, code, 0)] += 1
    return found


def clock_set_back(desk: Desk, runs: int) -> Counter[str]:
    """Write with a clock that is years behind, between others that are right."""
    found: Counter[str] = Counter()
    for number in range(runs):
        reset(desk)
        behind = datetime(desk.dice.randrange(1990, 2026), 1, 1, tzinfo=UTC)
        book = open_book(str(desk.book), SetClock(behind))
        note(book, How(by="AB"), text=f"Note {number}.")
        book.engine.dispose()
        found[outcome(desk, 0, 1)] += 1
    return found


FAULTS: dict[str, Callable[[Desk, int], Counter[str]]] = {
    "killed while recording": killed,
    "killed while making a file": killed_makers,
    "killed while upgrading": killed_upgrades,
    "disk full while recording": full_disk,
    "disk full while making a file": full_disk_makers,
    "file and folder read-only": read_only,
    "file locked by another": locked,
    "clock set back": clock_set_back,
}
"""What each fault is called in the table."""


def load_all(desk: Desk) -> None:
    """Run every command once in this process, so that forks of it find all modules loaded."""
    before = Path.cwd()
    os.chdir(desk.folder)
    for args in (*COMMANDS.values(), *MAKERS.values()):
        reset(desk)
        env = {"POTTLE_LEDGER": str(desk.book), "POTTLE_BY": "AB"}
        answer = CliRunner().invoke(app, list(args), env=env)
        assert answer.exit_code == 0, answer.output
    os.chdir(before)


def main(runs: int, seed: int) -> int:
    """Try every fault and print the table; return how many runs were losses."""
    losses = 0
    print(f"{'fault':<32}{'runs':>7}{'whole':>7}{'nothing':>9}{'losses':>8}")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        folder.chmod(0o755)
        (folder / "out").mkdir()
        new_book(str(folder / "whole.db"))
        copy_book(folder / "whole.db", folder / "pottle.db")
        desk = Desk(folder, bodies(folder / "pottle.db"), random.Random(seed))
        assert fork(desk, ("export", "whole.jsonl")) == 0
        load_all(desk)
        for fault, try_it in FAULTS.items():
            found = try_it(desk, runs)
            losses += found["loss"]
            print(
                f"{fault:<32}{runs:>7}{found['whole']:>7}{found['nothing']:>9}{found['loss']:>8}",
                flush=True,
            )
    return losses


if __name__ == "__main__":
    sys.exit(bool(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200, seed=20260302)))
