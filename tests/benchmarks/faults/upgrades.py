"""Upgrades of older books on a desk, and what is left of one that was broken off.

Refuses: to call good what cannot be upgraded again with what was left there.
"""

import sqlite3
import time
from contextlib import closing
from pathlib import Path

from tests.benchmarks.desk import Desk, bodies, fork, is_sound, named_files, reset
from tests.keeper import copy_book

UPGRADE = ("upgrade", "--keep-in", "out")


def upgrade(desk: Desk, old: Path, kill_after: float | None) -> tuple[float, int]:
    """Upgrade a copy of an older book; return how long it took, and the exit code."""
    reset(desk)
    desk.book.unlink()
    copy_book(old, desk.book)
    began = time.perf_counter()
    code = fork(desk, UPGRADE, kill_after=kill_after)
    return time.perf_counter() - began, code


def upgraded(desk: Desk, texts: tuple[str, ...], version: int) -> str:
    """Return what a broken upgrade left: `whole`, `nothing` or `loss`.

    Args:
        desk: Where it took place.
        texts: The texts of the book's entries.
        version: The form that the book had.
    """
    try:
        return _left(desk, texts, version)
    except sqlite3.Error:
        return "loss"


def _left(desk: Desk, texts: tuple[str, ...], version: int) -> str:
    is_new = is_sound(desk.book)
    if not is_new and version_of(desk.book) != version:
        return "loss"
    if any(bodies(path) != texts for path in (desk.book, *named_files(desk))):
        return "loss"
    again = fork(desk, UPGRADE) == 0 and is_sound(desk.book) and bodies(desk.book) == texts
    return "loss" if not again else "whole" if is_new else "nothing"


def version_of(where: Path) -> int:
    """Return the version that the header of a book tells."""
    with closing(sqlite3.connect(where)) as client:
        return int(client.execute("PRAGMA user_version").fetchone()[0])
