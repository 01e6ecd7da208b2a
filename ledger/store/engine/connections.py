"""Opening the book's file or server, and its transactions.

Guarantees: SQLite with full synchronisation and foreign keys on; a writer holds the whole
book from its first read to its commit. Refuses: a missing book, a file that is none, a book of
another version; each in words.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event, text
from sqlalchemy.exc import (
    DBAPIError,
    OperationalError,
)
from sqlalchemy.pool import NullPool

from ledger.errors import StorageError
from ledger.store.engine import patience
from ledger.store.engine.address import is_server, shown
from ledger.store.engine.refusals import (
    cause,
    is_too_weak,
    storage_errors,
    too_weak,
    unanswered,
)
from ledger.store.engine.servers import server_engine

__all__ = [
    "Connection",
    "Engine",
    "book_version",
    "cause",
    "check_book",
    "connect",
    "connected",
    "is_server",
    "is_writing",
    "reading",
    "server_now",
    "shown",
    "storage_errors",
    "writing",
]

APPLICATION_ID = 0x506F746C
"""Marks a SQLite file as a book, in its header: the letters Potl."""
SCHEMA_VERSION = 8
"""Version of the tables, as the last migration leaves them."""
LOCK_KEY = 0x706F74746C65
"""Key of the advisory lock that makes PostgreSQL writers take turns: the letters pottle."""
CACHE_KIB = 131_072
"""How much of a file's book is kept at hand while it is open, at most: enough that a trace of few
lots costs in a long book what it does in a short one."""
_TURN = text(
    "SELECT set_config('idle_in_transaction_session_timeout', :idle, true), "
    "pg_advisory_xact_lock(:key), clock_timestamp() AS now"
)
SERVER_NOW = "server_now"
_DAMAGED = (
    "The file is damaged. Keep it as it is, and take back the last copy with: pottle restore FILE "
    "--to PATH"
)


def connect(where: str) -> Engine:
    """Return an engine for a book's file path or server URL; opens nothing yet."""
    if is_server(where):
        return server_engine(where)
    # None: the driver begins no transaction by itself, _begin_sqlite does.
    how: dict[str, Any] = {"isolation_level": None, "timeout": patience.BUSY_MS / 1000}
    if address := protected(where):
        engine = create_engine(
            "sqlite://",
            creator=lambda: sqlite3.connect(address, uri=True, check_same_thread=False, **how),
            poolclass=NullPool,
        )
    else:
        engine = create_engine(URL.create("sqlite", database=where), connect_args=how)
    event.listen(engine, "connect", _set_up_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


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


@contextmanager
def connected(where: str) -> Iterator[Engine]:
    """Give an engine for a book's file path or server URL; at the end it holds no connection."""
    engine = connect(where)
    try:
        yield engine
    finally:
        engine.dispose()


def _set_up_sqlite(connection: Any, _record: object) -> None:  # noqa: ANN401 - a DB-API object
    # The write-ahead log is not among these: a file that turns out to be no book stays as it is.
    for pragma in (
        f"busy_timeout = {patience.BUSY_MS}",
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
    ):
        connection.execute(f"PRAGMA {pragma}")


def _begin_sqlite(connection: Connection) -> None:
    # A writer takes its turn before it reads: what the rules saw is still so at the commit.
    told = "BEGIN IMMEDIATE" if is_writing(connection) else "BEGIN"
    driver: Any = connection.connection.driver_connection
    try:
        driver.execute(told)
    except sqlite3.Error as error:
        raise DBAPIError.instance(told, None, error, sqlite3.Error) from error


def is_writing(connection: Connection) -> bool:
    """Return whether a connection's transaction appends; only it sees what it appended so far."""
    return bool(connection.get_execution_options().get("writes", False))


def server_now(connection: Connection) -> datetime | None:
    """Return what a server's clock said when a writer's turn began; None of a file."""
    now = connection.info.get(SERVER_NOW)
    return now if isinstance(now, datetime) else None


@contextmanager
def writing(engine: Engine) -> Iterator[Connection]:
    """Open a transaction that alone may write; commits at its end, or leaves no trace."""
    with (
        storage_errors(),
        engine.connect().execution_options(writes=True) as connection,
        connection.begin(),
    ):
        if engine.dialect.name == "postgresql":
            # It ends with the transaction, whatever becomes of the process; and who stops in it is
            # put out.
            told = connection.execute(_TURN, {"key": LOCK_KEY, "idle": str(patience.IDLE_MS)}).one()
            connection.info[SERVER_NOW] = told.now
        yield connection


@contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """Open a transaction that sees the book as it is at one moment."""
    with storage_errors(), engine.connect() as connection:
        if engine.dialect.name == "postgresql":  # which else shows each statement a later moment
            connection.execution_options(isolation_level="REPEATABLE READ")
        with connection.begin():
            yield connection


def check_book(engine: Engine, where: str) -> None:
    """Make sure that `where` is a book of this version.

    Raises:
        StorageError: It is missing, is no book, or is of another version.
    """
    version = book_version(engine, where)
    if version < SCHEMA_VERSION:
        raise StorageError(
            f"The book {shown(where)} is of version {version}; this pottle writes version "
            f"{SCHEMA_VERSION}.",
            "Run pottle upgrade, which keeps a copy first. Nothing was changed.",
        )


def book_version(engine: Engine, where: str) -> int:
    """Return of which version a book is, this one or an older.

    Raises:
        StorageError: It is missing, is no book, or is of a newer version.
    """
    version = _server_version(engine) if is_server(where) else _file_version(engine, where)
    if version > SCHEMA_VERSION:
        raise StorageError(
            f"The book {shown(where)} is of version {version}; this pottle knows versions up to "
            f"{SCHEMA_VERSION}.",
            "Use the newer pottle that wrote it. Nothing was changed.",
        )
    return version


def _file_version(engine: Engine, where: str) -> int:
    try:
        # Asked before, for SQLite would make an empty file of that name.
        is_there, is_folder = Path(where).exists(), Path(where).is_dir()
    except OSError as error:
        raise StorageError(
            f"No book can be named {where}: {error.strerror}.", "Give a shorter name."
        ) from error
    if not is_there:
        raise StorageError(
            f"There is no book at {where}.",
            'Make one with: pottle init --house "NAME" --currency EUR',
        )
    if is_folder:
        raise StorageError(
            f"{where} is a folder, and a book is a file.",
            "Name the file in it with --ledger.",
        )
    try:
        with engine.connect() as connection:
            mark = connection.exec_driver_sql("PRAGMA application_id").scalar_one()
            version = connection.exec_driver_sql("PRAGMA user_version").scalar_one()
    except (DBAPIError, UnicodeDecodeError) as error:
        if isinstance(error, DBAPIError) and "not a database" in str(error.orig):
            raise _not_a_book(where) from error
        may_not = isinstance(error, OperationalError)
        raise StorageError(
            f"The book {where} could not be opened: {cause(error)}.",
            "Check that you may read and write the file and its folder." if may_not else _DAMAGED,
        ) from error
    if mark != APPLICATION_ID:
        raise _not_a_book(where)
    return int(version)


def _not_a_book(where: str) -> StorageError:
    return StorageError(
        f"The file {where} is not a book of pottle.",
        "Name the right file with --ledger, or make a book elsewhere with: pottle init",
    )


def _server_version(engine: Engine) -> int:
    try:
        with engine.connect() as connection:
            told = connection.exec_driver_sql("SELECT version_num FROM alembic_version")
            versions = sorted(told.scalars())
    except OperationalError as error:
        raise unanswered(error) from error
    except DBAPIError as error:
        if is_too_weak(error):
            raise too_weak(error) from error
        raise StorageError(
            "The database named in POTTLE_LEDGER holds no book.",
            'Make one with: pottle init --house "NAME" --currency EUR',
        ) from error
    if len(versions) != 1 or not versions[0].isdecimal():
        raise StorageError(
            f"The book's version is written as {versions}, where one number was expected.",
            "Somebody wrote into its table alembic_version: ask the keeper of the server to put it "
            "right. Nothing was changed.",
        )
    return int(versions[0])
