"""Making a new book by running its migrations.

Guarantees: a book is made whole or not at all; a SQLite file is private to its owner. Refuses:
to touch a book or a file that is there already. The only module that imports Alembic.
"""

import sqlite3
from collections.abc import Callable
from pathlib import Path

from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.operations import Operations
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, inspect

from ledger.errors import StorageError
from ledger.store.engine.connections import (
    APPLICATION_ID,
    connected,
    is_server,
    storage_errors,
    writing,
)
from ledger.store.engine.files import new_file, refuse_leftovers

MIGRATIONS = Path(__file__).parents[1] / "migrations"


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
        with new_file(path) as part:
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
            migrate(connection)
            fill(connection)


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


def script() -> ScriptDirectory:
    """Return the history of migrations."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    config.set_main_option("path_separator", "os")
    return ScriptDirectory.from_config(config)


def migrate(connection: Connection, to: str = "head") -> None:
    """Run every migration up to `to` in the connection's transaction."""
    steps = script()
    context = MigrationContext.configure(
        # Alembic's own commands would open a connection of their own; all goes into one
        # transaction.
        connection,
        opts={"fn": lambda at, _context: steps._upgrade_revs(to, at)},
    )
    with storage_errors(), Operations.context(context):
        context.run_migrations()
    if connection.dialect.name == "sqlite":
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        reached = int(context.get_current_revision() or 0)
        connection.exec_driver_sql(f"PRAGMA user_version = {reached}")
