"""A book's file by the driver of SQLite alone: what a command needs before it answers.

Guarantees: the settings and transactions of a file are these for whoever opens it. To load
SQLAlchemy takes longer than all else that a command does, so a file is asked without it; what is
asked in SQLAlchemy's own way is answered by it, in the same transaction. Refuses: to know a server.
"""

import os
import sqlite3
from collections import deque
from functools import cached_property
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self

from ledger.store.engine import patience

__all__ = [
    "BareConnection",
    "BareEngine",
    "Connection",
    "Engine",
    "begin",
    "opened",
    "protected",
    "set_up",
    "wrapped",
]

CACHE_KIB = 131_072
"""How much of a file's book is kept at hand while it is open, at most: enough that a trace of few
lots costs in a long book what it does in a short one."""
STATEMENTS = 512
"""How many prepared statements a connection keeps: more than the book has, so that in a session
none is worked out anew."""
MOST_IDLE = 5
"""How many connections that nobody uses are kept open."""
# The write-ahead log is not among these: a file that turns out to be no book stays as it is.
_SETTINGS = (
    "foreign_keys = ON",
    # Without it REPLACE takes the old row away past the guard of DELETE.
    "recursive_triggers = ON",
    # What was said to be recorded has reached the disk; on macOS the disk itself, too.
    # EXTRA is FULL, and where there is no write-ahead log the end of the journal, which is the
    # commit, reaches the disk too: a copy that is written in has none.
    "synchronous = EXTRA",
    "fullfsync = ON",
    "checkpoint_fullfsync = ON",
    f"cache_size = -{CACHE_KIB}",
    # What is erased is overwritten, wherever SQLite puts its bytes.
    "secure_delete = ON",
)


def set_up(driver: sqlite3.Connection) -> None:
    """Give a connection to a file the settings of a book."""
    for setting in (f"busy_timeout = {patience.BUSY_MS}", *_SETTINGS):
        driver.execute(f"PRAGMA {setting}")


def opened(where: str) -> sqlite3.Connection:
    """Return a new connection to a file, which begins no transaction by itself."""
    address = protected(where)
    return sqlite3.connect(
        address or where,
        uri=address is not None,
        timeout=patience.BUSY_MS / 1000,
        isolation_level=None,
        check_same_thread=False,
        cached_statements=STATEMENTS,
    )


def protected(where: str) -> str | None:
    """Return the address by which a write-protected file is read; None where it can be written.

    SQLite makes files beside a book, even to read it; of a file that nobody can write in it need
    not, unless a log with entries lies beside it.
    """
    path = Path(where)
    try:
        if not path.exists() or (os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)):
            return None
        log = path.with_name(path.name + "-wal")
        has_log = log.exists() and log.stat().st_size > 0
    except OSError:
        return None
    return f"{path.absolute().as_uri()}?mode=ro{'' if has_log else '&immutable=1'}"


def begin(driver: Any, *, writes: bool) -> None:  # noqa: ANN401 - a driver's
    """Begin a transaction: a writer takes its turn before it reads, so that what it saw stays so.

    Raises:
        DBAPIError: It cannot be begun.
    """
    _tell(driver, "BEGIN IMMEDIATE" if writes else "BEGIN")


def _tell(driver: Any, statement: str) -> None:  # noqa: ANN401 - a driver's
    try:
        driver.execute(statement)
    except sqlite3.Error as error:
        raise wrapped(statement, error, sqlite3.Error) from error


def wrapped(statement: str, error: Exception, base: type[Exception]) -> BaseException:
    """Return what a driver raised as SQLAlchemy raises it."""
    from sqlalchemy.exc import DBAPIError  # where all went well it is not needed

    return DBAPIError.instance(statement, None, error, base)


class Dialect:
    """Of what kind an engine is."""

    name = "sqlite"
    """Its name, as SQLAlchemy calls it."""
    dbapi = loaded_dbapi = sqlite3
    """Its driver."""


class BareEngine:
    """A book's file."""

    dialect = Dialect()

    def __init__(self, where: str) -> None:
        """Remember where it is; opens nothing yet."""
        self._where = where
        self._idle: deque[sqlite3.Connection] = deque()

    def connect(self) -> "BareConnection":
        """Return a connection, of which the file is opened only where none is at hand.

        Raises:
            DBAPIError: It cannot be opened.
        """
        try:
            driver = self._idle.pop() if self._idle else self._new()
        except sqlite3.Error as error:
            raise wrapped("", error, sqlite3.Error) from error
        return BareConnection(self, driver)

    def _new(self) -> sqlite3.Connection:
        driver = opened(self._where)
        try:
            set_up(driver)
        except BaseException:
            driver.close()
            raise
        return driver

    def take_back(self, driver: sqlite3.Connection) -> None:
        """Keep a connection for who comes next; it is in no transaction."""
        if len(self._idle) < MOST_IDLE:
            self._idle.append(driver)
        else:
            driver.close()

    def dispose(self) -> None:
        """Close the file, as far as nobody uses it."""
        while self._idle:
            self._idle.pop().close()


class BareConnection:
    """A connection to a book's file, asked as SQLAlchemy's is."""

    def __init__(self, engine: BareEngine, driver: sqlite3.Connection) -> None:
        """Take a driver's connection."""
        self.engine = engine
        self.dialect = engine.dialect
        self.driver_connection = driver
        self.info: dict[object, object] = {}
        self._options: dict[str, object] = {}
        self._transaction: Transaction | None = None

    @property
    def connection(self) -> Self:
        """Where the driver's own connection is found."""
        return self

    def __enter__(self) -> Self:
        """Return the connection; at the end it is given back."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Give the connection back."""
        self.rollback()
        self.engine.take_back(self.driver_connection)

    def execution_options(self, **how: object) -> Self:
        """Remember what is said of the connection, and return it."""
        self._options |= how
        return self

    def get_execution_options(self) -> dict[str, object]:
        """Return what is said of the connection."""
        return self._options

    def get_transaction(self) -> "Transaction | None":
        """Return the transaction, another object each time; None where there is none."""
        return self._transaction

    def begin(self) -> "Transaction":
        """Begin a transaction.

        Raises:
            DBAPIError: It cannot be begun.
        """
        begin(self.driver_connection, writes=bool(self._options.get("writes")))
        self._transaction = Transaction(self)
        return self._transaction

    def commit(self) -> None:
        """End the transaction, if there is one, and let it stand.

        Raises:
            DBAPIError: It cannot be committed.
        """
        if self.driver_connection.in_transaction:
            _tell(self.driver_connection, "COMMIT")
        self._transaction = None

    def rollback(self) -> None:
        """End the transaction, if there is one, and leave no trace."""
        self._transaction = None
        if self.driver_connection.in_transaction:
            self.driver_connection.rollback()

    @cached_property
    def _whole(self) -> Any:  # noqa: ANN401 - a connection of SQLAlchemy
        from ledger.store.engine.whole import whole  # what takes long to load

        return whole(self.driver_connection)

    def __getattr__(self, name: str) -> Any:  # noqa: ANN401 - as SQLAlchemy's
        """Return what SQLAlchemy has of that name, for the same transaction."""
        if name.startswith("_"):
            raise AttributeError(name)
        return getattr(self._whole, name)


class Transaction:
    """A transaction, which is committed at the end of the `with`, or leaves no trace."""

    def __init__(self, connection: BareConnection) -> None:
        """Remember of which connection it is."""
        self._connection = connection

    def rollback(self) -> None:
        """End it, and leave no trace."""
        self._connection.rollback()

    def __enter__(self) -> Self:
        """Return the transaction."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End it."""
        try:
            if kind is None:
                self._connection.commit()
        finally:
            self.rollback()


if TYPE_CHECKING:
    # As far as the store asks of them these are the same.
    from sqlalchemy import Connection, Engine
else:
    Connection, Engine = BareConnection, BareEngine
