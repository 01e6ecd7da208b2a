"""Making a new book: a file from the kept schema, on a server by running its migrations.

Guarantees: a book is made whole or not at all; a SQLite file is private to its owner, and has what
the migrations make. Refuses: to touch a book or a file that is there already.
"""

import sqlite3
from collections.abc import Callable
from pathlib import Path

from sqlalchemy import Connection, Engine, inspect

from ledger.errors import StorageError
from ledger.store.engine.connections import (
    APPLICATION_ID,
    SCHEMA_VERSION,
    connected,
    is_server,
    storage_errors,
    writing,
)
from ledger.store.engine.files import refuse_leftovers
from ledger.store.form.kept import END, kept_schema
from ledger.whole_files import whole_file


def create_book(
    engine: Engine, where: str, fill: Callable[[Connection], object] = lambda connection: None
) -> None:
    """Make a new book with what `fill` writes into it, all at once.

    Args:
        engine: The engine of the place.
        where: The place: a path or a server's address.
        fill: Called in the transaction that makes the book.

    Raises:
        StorageError: Something is there already, or the place cannot be written.
    """
    if is_server(where):
        _create_on_server(engine, fill)
        return
    path = Path(where)
    try:
        refuse_leftovers(path)
        with whole_file(path, is_private=True, may_replace=False) as part:
            _create_file(part, fill)
    except FileExistsError as error:
        raise StorageError(
            f"There is a file at {where} already; it was left as it is.",
            "Open that book, or give another place with --ledger.",
        ) from error
    except OSError as error:
        raise StorageError(
            f"The book {where} could not be made: {error.strerror}.",
            "Choose a folder that exists and that you may write in.",
        ) from error


def _create_on_server(engine: Engine, fill: Callable[[Connection], object]) -> None:
    from ledger.store.form.migrate import migrate  # Alembic takes long to load; files need none

    with writing(engine) as connection:
        if inspect(connection).has_table("entry"):
            raise StorageError(
                "The database holds a book already; it was left as it is.",
                "Open that book, or make a new database for another.",
            )
        migrate(connection)
        fill(connection)


def _create_file(part: Path, fill: Callable[[Connection], object]) -> None:
    with connected(str(part)) as engine:
        use_write_ahead_log(engine)
        with writing(engine) as connection:
            make_as_kept(connection)
            fill(connection)


def make_as_kept(connection: Connection) -> None:
    """Make in an empty file all that every book of this version is made with."""
    with storage_errors():
        for statement in filter(None, kept_schema().split(END)):
            connection.exec_driver_sql(statement)
            if statement.startswith("CREATE TABLE alembic_version"):
                # Now, since a guard that comes later lets nobody write there.
                reached = f"{SCHEMA_VERSION:04d}"
                connection.exec_driver_sql("INSERT INTO alembic_version VALUES (?)", (reached,))
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")


def use_write_ahead_log(engine: Engine) -> None:
    """Let readers go on while somebody writes; kept in the file from then on."""
    connection = engine.raw_connection()
    try:
        # Past the engine, which would begin a transaction, in which the mode cannot change.
        connection.cursor().execute("PRAGMA journal_mode = WAL")
    except sqlite3.Error as error:
        raise StorageError(
            f"The new book could not be written: {error}.", "Choose a place with room enough."
        ) from error
    finally:
        connection.close()
