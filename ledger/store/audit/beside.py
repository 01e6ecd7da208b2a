"""Reading beside: parts of a long reading done one after the other while the caller does another.

Guarantees: in a long book's file the parts are read by a connection of their own, each in a
transaction of its own; when the caller ends before them, by an error or by hand, the parts are
ended too. By the caller's connection alone is read a short book, of which another connection would
have to learn the form first; a server, which has more to do than this; what the caller itself has
appended and not yet committed; and a file that keeps no write-ahead log, in which two readers and a
writer could wait for each other. Refuses: to write, and to promise that parts see the same moment
of the book as the caller: what is appended meanwhile may be seen by some of them.

There is one reader beside, not one a core: SQLite as Debian builds it gives out memory to one
thread at a time, and three threads that write texts took longer than two.
"""

import time
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import contextmanager
from typing import Any, TypeVar

from sqlalchemy import Connection

from ledger.store.audit.file import any_text
from ledger.store.engine.connections import is_writing

ResultT = TypeVar("ResultT")
LONG_PAGES = 512
"""How many pages of a file make a book long: of those of 4 KiB some two thousand entries fill so
many. At eleven hundred two readers took as long as one, at seventy longer."""
A_MOMENT_S = 0.02
"""How long a part that was told to end is waited for before it is told again: it may have been
between two statements."""


class Beside:
    """A reader that works while the caller does."""

    def __init__(self, connection: Connection, pool: ThreadPoolExecutor) -> None:
        """Let the thread of a pool read the book of a connection."""
        self._caller = connection
        self._is_apart = _is_long_file(connection) and not is_writing(connection)
        self._pool = pool
        self._parts: list[Future[Any]] = []
        self._reading: set[Any] = set()

    def ask(self, reader: Callable[[Connection], ResultT]) -> "Future[ResultT]":
        """Have a part read; what it raises is raised to whoever asks for its result."""
        if self._is_apart:
            part = self._pool.submit(self._read, reader)
            self._parts.append(part)
            return part
        done: Future[ResultT] = Future()
        try:
            done.set_result(reader(self._caller))
        except Exception as error:
            done.set_exception(error)
        return done

    def _read(self, reader: Callable[[Connection], ResultT]) -> ResultT:
        engine = self._caller.engine
        with engine.connect() as connection, connection.begin(), any_text(connection):
            driver = connection.connection.driver_connection
            self._reading.add(driver)
            try:
                return reader(connection)
            finally:
                self._reading.discard(driver)

    def end(self) -> None:
        """End what is being read, and begin no more."""
        self._pool.shutdown(wait=False, cancel_futures=True)
        while not all(part.done() for part in self._parts):
            for driver in tuple(self._reading):
                driver.interrupt()
            time.sleep(A_MOMENT_S)


def _is_long_file(connection: Connection) -> bool:
    """Return whether a book is a long file, of which one may read while another writes."""
    if connection.dialect.name != "sqlite":
        return False
    pages: int = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
    has_log = connection.exec_driver_sql("PRAGMA journal_mode").scalar_one() == "wal"
    return has_log and pages >= LONG_PAGES


@contextmanager
def beside(connection: Connection) -> Iterator[Beside]:
    """Give a second reader of a connection's book."""
    with ThreadPoolExecutor(max_workers=1) as pool:
        second = Beside(connection, pool)
        try:
            yield second
        finally:
            second.end()
