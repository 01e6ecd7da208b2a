"""A folder in which commands are run in forks of this process, and what they leave in it.

Guarantees: every run begins on the same book, with its command already loaded. Refuses: to call a
run good of which the book is not sound, or holds a command in part.
"""

import json
import os
import random
import signal
import sqlite3
import time
from collections.abc import Callable, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from typer.testing import CliRunner

from cli.main import app
from ledger.errors import LedgerError
from ledger.service.bench.add import add
from ledger.service.bench.receive import receive
from ledger.service.bench.start import start
from ledger.service.copies.import_ import import_book
from ledger.service.desk.book import How, open_book
from ledger.service.evidence import verify as verifying
from ledger.service.masters.house import init
from ledger.service.masters.material import material
from ledger.service.masters.person import person
from tests.keeper import copy_book

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
    book.close()


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
        book.close()
    except LedgerError:
        return False
    return not found.faults


def said(texts: Sequence[str]) -> list[dict[str, Any]]:
    """Return what texts of entries say besides when they were written."""
    return [
        {key: told for key, told in json.loads(body).items() if not key.endswith("_at")}
        for body in texts
    ]


def outcome(desk: Desk, code: int, whole: Sequence[str]) -> str:
    """Return what a run left: `whole`, `nothing` or `loss`.

    Args:
        desk: Where it took place.
        code: Its exit code.
        whole: The texts that the command adds when nothing stops it.
    """
    if code not in (0, 5, -signal.SIGKILL) or not is_sound(desk.book):
        return "loss"
    after = bodies(desk.book)
    kept, added = after[: len(desk.before)], after[len(desk.before) :]
    if kept != desk.before or (added and said(added) != said(whole)):
        return "loss"
    if (code == 0 and not added) or (code == 5 and added):
        return "loss"
    return "whole" if added else "nothing"


def made(desk: Desk, code: int, whole: Sequence[str]) -> str:
    """Return what a run that makes a file left: `whole`, `nothing` or `loss`.

    Args:
        desk: Where it took place.
        code: Its exit code.
        whole: The texts of the book that it makes when nothing stops it.
    """
    named = named_files(desk)
    if code not in (0, 5, -signal.SIGKILL) or not is_sound(desk.book):
        return "loss"
    if bodies(desk.book) != desk.before or ((code == 0) != bool(named) and code != -signal.SIGKILL):
        return "loss"
    texts = [texts_in(desk, path) for path in named]
    if any(found is None or said(found) != said(whole) for found in texts):
        return "loss"
    return "whole" if named else "nothing"


def named_files(desk: Desk) -> list[Path]:
    """Return the files in the folder `out` that have a name of their own."""
    return [path for path in (desk.folder / "out").iterdir() if not path.name.startswith(".")]


def texts_in(desk: Desk, path: Path) -> tuple[str, ...] | None:
    """Return the texts in a book, or in the lines of one; None if it is not whole."""
    if path.suffix == ".jsonl":
        again = desk.folder / "again.db"
        again.unlink(missing_ok=True)
        try:
            import_book(path, str(again), lambda done, total: None)
        except LedgerError:
            return None
        path = again
    return bodies(path) if is_sound(path) else None


def undisturbed(desk: Desk, args: tuple[str, ...]) -> tuple[float, tuple[str, ...]]:
    """Return how long a command that makes a file takes, and the texts of the book it makes."""
    taken, _ = seconds(desk, args)
    (path,) = named_files(desk)
    texts = texts_in(desk, path)
    assert texts
    return taken, texts


def seconds(desk: Desk, args: tuple[str, ...]) -> tuple[float, tuple[str, ...]]:
    """Return how long a command takes when nothing stops it, and the texts that it adds."""
    reset(desk)
    began = time.perf_counter()
    code = fork(desk, args)
    taken = time.perf_counter() - began
    assert code == 0, (args, code)
    return taken, bodies(desk.book)[len(desk.before) :]


def moment(desk: Desk, taken: float, number: int) -> float | None:
    """Return when a run is killed: the first at once, the second never, the others at any moment.

    Every second of these is killed near its end, where all is about to be recorded.
    """
    if number < 2:
        return None if number else 0.0
    return taken * (desk.dice.uniform(0.8, 1.3) if number % 2 else desk.dice.uniform(0, 1.2))


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


def new_desk(folder: Path, dice: random.Random) -> Desk:
    """Lay out a folder with the book, its copies and a place for what is made."""
    folder.chmod(0o755)
    (folder / "out").mkdir()
    new_book(str(folder / "whole.db"))
    copy_book(folder / "whole.db", folder / "pottle.db")
    desk = Desk(folder, bodies(folder / "pottle.db"), dice)
    assert fork(desk, ("export", "whole.jsonl")) == 0
    load_all(desk)
    return desk
