"""After a loss of power what was flushed is there; of the rest anything, down to half a write."""

import random

from tests.benchmarks.faults.disk import Act, Kind
from tests.benchmarks.faults.lost_power import SECTOR, after

OLD, NEW = b"a" * 2 * SECTOR, b"b" * 2 * SECTOR
BIRTH = Act(Kind.NAME, "new", 7, is_new=True)
WRITE = Act(Kind.WRITE, "new", 7, content=NEW)
FLUSH = Act(Kind.FLUSH, "new", 7)


def states(*acts: Act) -> set[tuple[tuple[str, bytes], ...]]:
    """Return what was there after two hundred losses of power."""
    dice = random.Random(20260302)
    return {tuple(sorted(after({"old": OLD}, acts, dice).items())) for _ in range(200)}


def test_what_was_flushed_is_there() -> None:
    assert states(BIRTH, WRITE, FLUSH) == {(("new", NEW), ("old", OLD))}


def test_what_was_not_flushed_is_there_or_not_or_in_parts() -> None:
    found = states(Act(Kind.WRITE, "old", 3, content=NEW))
    halves = (b"a" * SECTOR + b"b" * SECTOR, b"b" * SECTOR + b"a" * SECTOR)
    assert found == {(("old", content),) for content in (OLD, NEW, *halves)}


def test_a_name_that_was_not_flushed_is_there_or_not() -> None:
    moved = Act(Kind.MOVE, "old", 7, was="new")
    found = states(BIRTH, WRITE, FLUSH, moved)
    assert found == {(("new", NEW), ("old", OLD)), (("old", NEW),)}
    assert states(BIRTH, WRITE, FLUSH, moved, Act(Kind.FOLDER, "")) == {(("old", NEW),)}
