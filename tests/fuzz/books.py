"""Targets: a whole book in lines, and bench acts in a book."""

import atexit
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from inspect import unwrap
from pathlib import Path
from tempfile import mkdtemp
from types import CodeType
from unittest.mock import patch

from msgspec.structs import asdict
from sqlalchemy import Connection, Engine

from ledger.domain.entries.plain import entry_text, read_entry
from ledger.service.copies.export import export
from ledger.service.copies.import_ import import_book
from ledger.service.copies.season import Season, SeasonClock, play, start_time
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import Book, How, open_book
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import init
from ledger.store.engine.connections import connected, writing
from ledger.store.form import create
from tests.conftest import new_keeper
from tests.fuzz.laws import attempt, holds, same, text_of
from tests.keeper import SetClock
from tests.path import fill_every_table

HOW = ("by", "at", "because", "origin", "sheet")
"""Words about an act, not of it."""


def silent(done: int, total: int) -> None:
    """Take no notice of progress."""


@cache
def folder() -> Path:
    """Return a folder for the files of this process; it is removed when the process ends."""
    path = Path(mkdtemp(prefix="fuzz-books-"))
    atexit.register(shutil.rmtree, path, ignore_errors=True)
    return path


@cache
def whole() -> Path:
    """Make a book with a row in every table, once."""
    path = folder() / "whole.db"
    with new_keeper(str(path)) as keeper:
        fill_every_table(keeper)
    return path


@cache
def empty() -> Path:
    """Make a book without entries, once."""
    path = folder() / "empty.db"
    with connected(str(path)) as engine:
        create.create_book(engine, str(path))
    return path


def _create_swiftly(engine: Engine, where: str, fill: Callable[[Connection], object]) -> None:
    """Make a book as `create_book` does, from a copy of an empty one and not by its migrations."""
    shutil.copy(empty(), where)
    try:
        with writing(engine) as connection:
            fill(connection)
    except BaseException:
        Path(where).unlink()
        raise
    finally:
        engine.dispose()


def lines(data: bytes) -> None:
    """A book in lines is taken whole, verifies and is written again; or nothing is kept."""
    source, target, again = (folder() / name for name in ("in.jsonl", "in.db", "out.jsonl"))
    source.write_bytes(data)
    empty()
    try:
        with patch.object(create, "create_book", _create_swiftly):
            made = attempt(lambda: import_book(source, str(target), silent))
        same("a book is there or it is not", target.exists(), made is not None)
        if made:
            with open_book(str(target)) as book:
                same("a book that was taken verifies", verify(book).faults, ())
                told = export(book, again, silent).seal
                same("a book has the seal of its lines", told, made.seal)
            same("a book is written again", again.read_bytes().rstrip(b"\n"), data.rstrip(b"\n"))
    finally:
        for path in (source, again, *folder().glob("in.db*")):
            path.unlink(missing_ok=True)


def played(season: Season) -> None:
    """A season is played into a book that verifies; a row that does not fit is told."""
    path, clock = folder() / "played.db", SeasonClock(start_time(season))
    empty()
    try:
        with patch.object(create, "create_book", _create_swiftly):
            book = attempt(lambda: init(str(path), **asdict(season.house), clock=clock))
        if book:
            with book:
                attempt(lambda: play(season, book, clock))
                same("a book that was played verifies", verify(book).faults, ())
    finally:
        for left in folder().glob("played.db*"):
            left.unlink()


@contextmanager
def book_at_hand() -> Iterator[Book]:
    """Give a copy of the whole book, the same for each until something is recorded in it."""
    path = folder() / "hand.db"
    if not path.exists():
        shutil.copy(whole(), path)
    with open_book(str(path), SetClock()) as book:
        yield book


def said(data: bytes) -> tuple[str, dict[str, str]]:
    """Return the verb and the words of an input: the verb in its first line, a word a line."""
    verb, *told = text_of(data).split("\n")
    return verb, dict(word.partition("=")[::2] for word in told if "=" in word)


def acts(data: bytes) -> None:
    """An act in any words is recorded as the book will read it, or refused in sentences."""
    verb, told = said(data)
    if verb not in VERBS:
        return
    known = unwrap(VERBS[verb]).__kwdefaults__ or {}
    needed = [name for name in _words_of(verb) if name not in known]
    words = {name: told.get(name, "") for name in needed}
    words |= {name: text for name, text in told.items() if name in known}
    how = How(**{name: told.get(name) for name in HOW})
    with book_at_hand() as book:
        recorded = attempt(lambda: VERBS[verb](book, how, **words))
        if recorded:
            body = entry_text(recorded.entry)
            same("an entry is kept as it was recorded", read_entry(body), recorded.entry)
            holds(verify(book).faults == (), "the book verifies", recorded)
    if recorded:
        for path in folder().glob("hand.db*"):
            path.unlink()


@cache
def _words_of(verb: str) -> tuple[str, ...]:
    code: CodeType = unwrap(VERBS[verb]).__code__
    return code.co_varnames[code.co_argcount : code.co_argcount + code.co_kwonlyargcount]
