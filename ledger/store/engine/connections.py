"""Opening the book's file or server, and its transactions.

Guarantees: SQLite with full synchronisation and foreign keys on; a writer holds the whole book from
its first read to its commit, but for an act on a server (`ledger/store/engine/acts.py`). Refuses: a
missing book, a file that is none, a book of another version; each in words.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import cast

from ledger.errors import StorageError
from ledger.store.engine import patience
from ledger.store.engine.address import is_server, shown
from ledger.store.engine.bare import (
    BareEngine,
    Connection,
    Engine,
    begin,
    opened,
    protected,
    set_up,
)
from ledger.store.engine.refusals import (
    cause,
    is_too_weak,
    storage_errors,
    too_weak,
    unanswered,
)
from ledger.store.engine.statements import ask, ask_one

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
    "open_engine",
    "protected",
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
_TURN = (
    "SELECT set_config('idle_in_transaction_session_timeout', :idle, true), "
    "pg_advisory_xact_lock(:key), clock_timestamp() AS now"
)
SERVER_NOW = "server_now"
_DAMAGED = (
    "The file is damaged. Keep it as it is, and take back the last copy with: pottle restore FILE "
    "--to PATH"
)


def open_engine(where: str) -> Engine:
    """Return an engine for a book that is there; opens nothing yet. Of a file it is a bare one."""
    return connect(where) if is_server(where) else cast("Engine", BareEngine(where))


def connect(where: str) -> Engine:
    """Return an engine of SQLAlchemy's for a book's file path or server URL; opens nothing yet."""
    if is_server(where):
        from ledger.store.engine.servers import server_engine  # what takes long to load

        return server_engine(where)
    from sqlalchemy import URL, create_engine, event
    from sqlalchemy.pool import NullPool

    if protected(where):
        engine = create_engine("sqlite://", creator=lambda: opened(where), poolclass=NullPool)
    else:
        url = URL.create("sqlite", database=where)
        # None: the driver begins no transaction by itself.
        how = {"isolation_level": None, "timeout": patience.BUSY_MS / 1000}
        engine = create_engine(url, connect_args=how)
    event.listen(engine, "connect", lambda driver, _record: set_up(driver))
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    begin(connection.connection.driver_connection, writes=is_writing(connection))


@contextmanager
def connected(where: str) -> Iterator[Engine]:
    """Give an engine for a book's file path or server URL; at the end it holds no connection."""
    engine = connect(where)
    try:
        yield engine
    finally:
        engine.dispose()


def is_writing(connection: Connection) -> bool:
    """Return whether a connection's transaction appends; only it sees what it appended so far."""
    return bool(connection.get_execution_options().get("writes", False))


def server_now(connection: Connection) -> datetime | None:
    """Return what a server's clock said when a writer first looked; None of a file."""
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
            ((*_, now),) = ask(connection, _TURN, key=LOCK_KEY, idle=str(patience.IDLE_MS))
            connection.info[SERVER_NOW] = now
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
            mark = ask_one(connection, "PRAGMA application_id")
            version = ask_one(connection, "PRAGMA user_version")
    except Exception as error:
        from sqlalchemy.exc import DBAPIError, OperationalError

        if not isinstance(error, DBAPIError | UnicodeDecodeError):
            raise
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
    from sqlalchemy.exc import DBAPIError, OperationalError

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
