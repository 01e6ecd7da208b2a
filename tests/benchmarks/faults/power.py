"""What is left when a command is killed at a write, which is torn, or the power fails.

Guarantees: a command's acts on the disk are counted first, so each of them can be the last; what a
failure of the power may leave is made of their log and opened as any book is. Whatever is left, the
next command is recorded. Refuses: what `desk` refuses, and to call good a command that had
answered and is gone.
"""

import os
import pickle
import random
import signal
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from itertools import count
from pathlib import Path
from typing import BinaryIO

from tests.benchmarks.desk import (
    COMMANDS,
    MAKERS,
    Desk,
    bodies,
    fork,
    is_sound,
    made,
    outcome,
    reset,
    seconds,
    undisturbed,
)
from tests.benchmarks.faults.disk import Act, Kind, watch
from tests.benchmarks.faults.lost_power import after
from tests.benchmarks.faults.upgrades import UPGRADE, upgraded
from tests.keeper import copy_book
from tests.old_books import OLD_BOOKS, OldBook

NEAR = 20
"""How many acts before its end a command is about to record all."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A command that is broken off."""

    args: tuple[str, ...]
    """Its words."""
    lay: Callable[[], object]
    """Puts the folder as it is before."""
    judge: Callable[[int], str]
    """Says of an exit code, and of what is there, whether it is whole, nothing or a loss."""
    acts: tuple[Act, ...]
    """What it does to the disk when nothing stops it."""


def trials(desk: Desk) -> list[Callable[[], Trial]]:
    """Return every command that records, makes a file or upgrades; each is counted when asked."""
    return [
        *(partial(_recording, desk, args) for args in COMMANDS.values()),
        *(partial(_making, desk, args) for args in MAKERS.values()),
        *(partial(_upgrading, desk, book) for book in OLD_BOOKS),
    ]


def _recording(desk: Desk, args: tuple[str, ...]) -> Trial:
    whole = seconds(desk, args)[1]
    return _counted(desk, args, partial(reset, desk), lambda code: outcome(desk, code, whole))


def _making(desk: Desk, args: tuple[str, ...]) -> Trial:
    whole = undisturbed(desk, args)[1]
    return _counted(desk, args, partial(reset, desk), lambda code: made(desk, code, whole))


def _upgrading(desk: Desk, book: OldBook) -> Trial:
    old = desk.folder / f"old{book.version}.db"
    old.unlink(missing_ok=True)
    book.put(old)
    texts = bodies(old)

    def lay() -> None:
        reset(desk)
        desk.book.unlink()
        copy_book(old, desk.book)

    return _counted(desk, UPGRADE, lay, lambda code: upgraded(desk, texts, book.version))


def _counted(
    desk: Desk, args: tuple[str, ...], lay: Callable[[], object], judge: Callable[[int], str]
) -> Trial:
    lay()
    log = desk.folder / "acts"
    with log.open("wb") as out:
        assert fork(desk, args, partial(watch, partial(_write, out))) == 0, args
    with log.open("rb") as file:
        return Trial(args, lay, judge, tuple(_read(file)))


def _write(out: BinaryIO, act: Act) -> None:
    pickle.dump(act, out)
    out.flush()


def _read(log: BinaryIO) -> list[Act]:
    found = list[Act]()
    while True:
        try:
            found.append(pickle.load(log))
        except EOFError:
            return found


def drawn(desk: Desk, runs: int) -> list[tuple[Trial, int]]:
    """Return commands, each with how many of its acts are done: none, all, or any number.

    Of every two one is near the end, where all is about to be recorded; of the others each act is
    once the last, in as many runs as there are acts.
    """
    asked = trials(desk)
    few = [asked[0]()] if runs < len(asked) else [ask() for ask in asked]
    every = [(trial, done) for trial in few for done in range(len(trial.acts))]
    desk.dice.shuffle(every)
    found = [(few[0], 0), (few[0], len(few[0].acts))]
    for number in range(runs):
        trial = few[number % len(few)]
        near = len(trial.acts) - desk.dice.randrange(min(len(trial.acts), NEAR))
        found += [every[number % len(every)], (trial, near)]
    return found[:runs]


def killed_at_writes(desk: Desk, runs: int) -> Counter[str]:
    """Kill commands at a write, of which a part is done."""
    found: Counter[str] = Counter()
    for trial, done in drawn(desk, runs):
        trial.lay()
        code = fork(desk, trial.args, partial(watch, _killer(done, desk.dice.random())))
        found[_next(desk, trial.judge(code))] += 1
    return found


def _killer(done: int, share: float) -> Callable[[Act], None]:
    turns = count()

    def kill(act: Act) -> None:
        if next(turns) == done:
            if act.kind is Kind.WRITE:
                with Path(act.path).open("r+b", buffering=0) as file:
                    os.pwrite(file.fileno(), act.content[: int(len(act.content) * share)], act.at)
                    os.kill(os.getpid(), signal.SIGKILL)
            os.kill(os.getpid(), signal.SIGKILL)

    return kill


def power_lost(desk: Desk, runs: int) -> Counter[str]:
    """Let the power fail while commands run, and open what the disk may then hold."""
    found: Counter[str] = Counter()
    for trial, done in drawn(desk, runs):
        trial.lay()
        state = after(_files(desk), trial.acts[:done], desk.dice)
        _put(desk, state)
        is_answered = done == len(trial.acts)
        left = trial.judge(-signal.SIGKILL)
        found["loss" if is_answered and left != "whole" else _next(desk, left)] += 1
    return found


def _places(desk: Desk) -> list[Path]:
    beside = [*desk.folder.glob("pottle.db*"), *desk.folder.glob(".*")]
    return [path for path in (*beside, *(desk.folder / "out").iterdir()) if path.is_file()]


def _files(desk: Desk) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in _places(desk)}


def _put(desk: Desk, state: Mapping[str, bytes]) -> None:
    for path in _places(desk):
        path.unlink()
    for name, content in state.items():
        if name.endswith("-shm"):  # in memory alone: what of it came to the disk is anything
            content = random.Random(len(content)).randbytes(32_768)
        path = Path(desk.folder, name)
        path.write_bytes(content)


def _next(desk: Desk, left: str) -> str:
    """Return what was left, a loss if the next command is not recorded after it."""
    if left == "loss":
        return left
    before = bodies(desk.book)
    if fork(desk, COMMANDS["note"]) or not is_sound(desk.book):
        return "loss"
    return left if bodies(desk.book)[: len(before)] == before else "loss"
