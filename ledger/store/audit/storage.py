"""Auditing what the database knows of its own storage: pages, indexes, conditions, references.

Guarantees: damage that the database itself can find is told. The conditions of tables are asked for
by statements of our own: SQLite's `integrity_check` looks at them too, but takes several times as
long for it as for all else. Refuses: to read texts of entries.
"""

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from functools import cache
from itertools import islice

from sqlalchemy import CheckConstraint, Connection, Table, text

from ledger.store.engine.connections import SCHEMA_VERSION
from ledger.store.form.tables import METADATA

MOST_OF_A_KIND = 5
"""So many findings of one of the database's own checks are told, so as to leave room for others."""


def version_faults(connection: Connection) -> Iterator[str]:
    """Yield in what way the version that is written in the book is not this one."""
    version = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
    if list(version) != [f"{SCHEMA_VERSION:04d}"]:
        yield f"The book's version is written as {list(version)}, not {SCHEMA_VERSION:04d}."


def condition_faults(connection: Connection) -> Iterator[str]:
    """Yield the tables of a file that hold what their conditions do not allow."""
    if connection.dialect.name != "sqlite":
        return
    broken = (table for table in METADATA.tables.values() if _breaks_conditions(connection, table))
    for table in islice(broken, MOST_OF_A_KIND):
        yield f"The table {table.name} holds what its conditions do not allow."


def engine_faults(
    connection: Connection,
    conditions: Callable[[Connection], Iterable[str]] = condition_faults,
) -> Iterator[str]:
    """Yield what the database finds wrong with its own storage, a sentence each.

    Args:
        connection: A connection in a transaction that reads.
        conditions: Tells what breaks conditions, where another connection asks for that.
    """
    yield from version_faults(connection)
    if connection.dialect.name != "sqlite":
        return
    with _conditions_left_out(connection):
        pages = connection.exec_driver_sql(f"PRAGMA integrity_check({MOST_OF_A_KIND})").scalars()
        yield from (f"The file is damaged: {' '.join(s.split())}." for s in pages if s != "ok")
    yield from conditions(connection)
    for row in islice(connection.exec_driver_sql("PRAGMA foreign_key_check"), MOST_OF_A_KIND):
        yield f"A row of the table {row[0]} refers to a row of {row[2]} that is not there."


@contextmanager
def _conditions_left_out(connection: Connection) -> Iterator[None]:
    connection.exec_driver_sql("PRAGMA ignore_check_constraints = ON")
    try:
        yield
    finally:
        connection.exec_driver_sql("PRAGMA ignore_check_constraints = OFF")


def _breaks_conditions(connection: Connection, table: Table) -> bool:
    query = _unfit(table)
    return bool(query and connection.exec_driver_sql(query).first())


@cache
def _unfit(table: Table) -> str:
    """Return the statement that finds a row which breaks a condition of its table; "" for none."""
    checks = (
        condition for condition in table.constraints if isinstance(condition, CheckConstraint)
    )
    broken = " OR ".join(f"NOT ({check.sqltext})" for check in checks)
    return f'SELECT 1 FROM "{table.name}" WHERE {broken} LIMIT 1' if broken else ""
