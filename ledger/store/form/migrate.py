"""Running migrations, up to the form of this version or to an older one.

Guarantees: all of them run in the caller's transaction, so that a book whose upgrade is broken off
is as it was. The only module that imports Alembic.
"""

from pathlib import Path

from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.operations import Operations
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from ledger.store.engine.connections import APPLICATION_ID, storage_errors

MIGRATIONS = Path(__file__).parents[1] / "migrations"


def script() -> ScriptDirectory:
    """Return the history of migrations."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
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
