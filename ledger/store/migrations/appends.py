"""What a migration that brings tables does to guard what is added to them, on both engines.

Guarantees: no byte of a row is touched. It is part of every migration that uses it, and so is never
changed in what it does.
"""

from collections.abc import Sequence

from alembic import op

from ledger.store.form.appends import postgres_order, sqlite_order


def guard_order(tables: Sequence[str], *, is_first: bool = False) -> None:
    """Guard what is added to tables.

    Args:
        tables: The tables.
        is_first: Whether the book has no such guards yet.
    """
    connection = op.get_bind()
    if connection.dialect.name == "sqlite":
        statements = sqlite_order(tables)
    else:
        schema = str(connection.exec_driver_sql("SELECT current_schema()").scalar_one())
        statements = postgres_order(tables, schema if is_first else None)
    for statement in statements:
        # As it stands: neither colons nor per cent signs are for a driver to fill in.
        connection.exec_driver_sql(statement, execution_options={"no_parameters": True})
