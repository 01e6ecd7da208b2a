"""What a disk may hold after its power failed in the middle of a row of acts.

Guarantees: what was flushed before is there, for names as for what is in files. Of what was not,
anything may be: each write done, not done or in parts, in any order; each name there or not.
"""

import random
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from tests.benchmarks.faults.disk import Act, Kind

SECTOR = 512
"""Bytes that a disk writes whole or not at all (the least of those in use: ATA, NVMe)."""


@dataclass(slots=True, eq=False)
class _File:
    """A file, whatever its names."""

    kept: bytes = b""
    """What is on the disk for good."""
    open_acts: list[Act] = field(default_factory=list)
    """What was done since, and may be lost."""


@dataclass(slots=True)
class _Disk:
    """Files and names as the acts leave them."""

    names: dict[str, _File] = field(default_factory=dict)
    """The names that are there for good."""
    shown: dict[str, _File] = field(default_factory=dict)
    """The names as a running system shows them."""
    files: dict[int, _File] = field(default_factory=dict)
    """The files by the system's number."""
    open_names: list[dict[str, _File | None]] = field(default_factory=list)
    """Changes of names since, each of which is done as one or not at all."""

    def do(self, act: Act) -> None:
        """Take in one act."""
        match act.kind:
            case Kind.FOLDER:
                self._keep_names(self.open_names)
                self.open_names.clear()
            case Kind.UNNAME:
                self._rename({act.path: None})
            case Kind.NAME:
                self._name(act)
            case Kind.MOVE:
                self._rename({act.path: self._file(act), act.was: None})
            case Kind.WRITE | Kind.CUT:
                self._file(act).open_acts.append(act)
            case Kind.FLUSH | Kind.WHOLE:
                self._flush(act)

    def _file(self, act: Act) -> _File:
        if act.path in self.shown and not act.was:
            self.files[act.file] = self.shown[act.path]
        return self.files.setdefault(act.file, _File())

    def _name(self, act: Act) -> None:
        if act.is_new:  # the system gives the number of a file that is gone to the next
            self.files[act.file] = _File()
        if act.path in self.shown:
            self.files[act.file] = self.shown[act.path]
        else:
            self._rename({act.path: self.files.setdefault(act.file, _File())})

    def _rename(self, change: dict[str, _File | None]) -> None:
        self.open_names.append(change)
        _apply(self.shown, change)

    def _keep_names(self, changes: Iterable[dict[str, _File | None]]) -> None:
        for change in changes:
            _apply(self.names, change)

    def _flush(self, act: Act) -> None:
        file = self._file(act)
        file.kept = act.content if act.kind is Kind.WHOLE else _done(file.kept, file.open_acts)
        file.open_acts.clear()
        # Whoever flushes a new file flushes its name: SQLite does for its logs, Linux for all. What
        # was done to that name before, comes before.
        born = {name for change in self.open_names if file in change.values() for name in change}
        self._keep_names(change for change in self.open_names if born & change.keys())
        self.open_names = [change for change in self.open_names if not born & change.keys()]


def after(
    before: Mapping[str, bytes], acts: Iterable[Act], dice: random.Random
) -> dict[str, bytes]:
    """Return what may be in the files of a folder once the power is back.

    Args:
        before: What was in them before, by their names; all of it on the disk for good.
        acts: What was done until the power failed.
        dice: What chooses among all that may be.
    """
    files = {name: _File(content) for name, content in before.items()}
    disk = _Disk(dict(files), dict(files))
    for act in acts:
        disk.do(act)
    # At times all is lost that may be, or nothing; else luck has it.
    share = dice.choice((0, 0.5, 1, dice.random()))
    for change in disk.open_names:
        if dice.random() < share:
            _apply(disk.names, change)
    return {name: _left(file, share, dice) for name, file in disk.names.items()}


def _left(file: _File, share: float, dice: random.Random) -> bytes:
    content = file.kept
    for act in dice.sample(file.open_acts, len(file.open_acts)):
        if dice.random() < share:
            content = _done(content, [act])
        elif act.kind is Kind.WRITE and dice.random() < share:
            content = _torn(content, act, dice)
    return content


def _torn(content: bytes, act: Act, dice: random.Random) -> bytes:
    """Return a file in which only some sectors of a write came to the disk."""
    for start in range(0, len(act.content), SECTOR):
        if dice.random() < 0.5:
            content = _written(content, act.at + start, act.content[start : start + SECTOR])
    return content


def _done(content: bytes, acts: Iterable[Act]) -> bytes:
    for act in acts:
        if act.kind is Kind.WRITE:
            content = _written(content, act.at, act.content)
        else:
            content = content[: act.at].ljust(act.at, b"\0")
    return content


def _written(content: bytes, at: int, new: bytes) -> bytes:
    return content[:at].ljust(at, b"\0") + new + content[at + len(new) :]


def _apply(names: dict[str, _File], change: Mapping[str, _File | None]) -> None:
    for name, file in change.items():
        if file is None:
            names.pop(name, None)
        else:
            names[name] = file
