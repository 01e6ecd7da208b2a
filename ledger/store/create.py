"""Making a new book by running its migrations.

Guarantees: a book is made whole or not at all; a SQLite file is private to its owner. Refuses:
to touch a book or a file that is there already. The only module that imports Alembic.
"""

from pathlib import Path

from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.operations import Operations
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, inspect

from ledger.errors import StorageError
from ledger.store.engine import (
    APPLICATION_ID,
    SCHEMA_VERSION,
    is_server,
    storage_errors,
    writing,
)

MIGRATIONS = Path(__file__).parent / "migrations"


def create_book(engine: Engine, where: str) -> None:
    """Make a new, empty book.

    Raises:
        StorageError: Something is there already, or the place cannot be written.
    """
    if is_server(where):
        with writing(engine) as connection:
            if inspect(connection).has_table("entry"):
                raise StorageError(
                    "The database holds a book already; it was left as it is.",
                    "Open that book, or make a new database for another.",
                )
            migrate(connection)
        return
    path = Path(where)
    if path.exists():
        raise StorageError(
            f"There is a file at {where} already; it was left as it is.",
            "Open that book, or give another place with --ledger.",
        )
    try:
        path.touch(mode=0o600, exist_ok=False)
    except OSError as error:
        raise StorageError(
            f"The book {where} could not be made: {error.strerror}.",
            "Choose a folder that exists and that you may write in.",
        ) from error
    try:
        _use_write_ahead_log(engine)
        with writing(engine) as connection:
            migrate(connection)
    except BaseException:
        path.unlink(missing_ok=True)
        raise


def _use_write_ahead_log(engine: Engine) -> None:
    """Let readers go on while somebody writes; kept in the file from then on."""
    connection = engine.raw_connection()
    try:
        connection.cursor().execute("PRAGMA journal_mode = WAL")
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
        connection, opts={"fn": lambda at, _context: steps._upgrade_revs(to, at)}
    )
    with storage_errors(), Operations.context(context):
        context.run_migrations()
    if connection.dialect.name == "sqlite":
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")
