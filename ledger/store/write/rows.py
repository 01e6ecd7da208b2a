"""Putting rows into the tables: the statements of it, each made once.

Guarantees: rows go in as they are given, those of one table by one statement. Refuses: to decide
their order.
"""

from collections.abc import Sequence
from functools import cache
from typing import Any

from ledger.store.engine.bare import Connection, wrapped
from ledger.store.engine.statements import run, settle
from ledger.store.engine.turn import written
from ledger.store.form.columns import columns_of
from ledger.store.form.mapping import Cells


def insert_row(connection: Connection, table: str, cells: Cells) -> None:
    """Insert one row."""
    run(connection, _insert(table, connection.dialect.name), cells)


def insert_many(connection: Connection, table: str, rows: Sequence[Cells]) -> None:
    """Insert many rows of one table as fast as its engine takes them."""
    written(connection)
    settle(connection)
    if connection.dialect.name == "postgresql":
        _copy_rows(connection, table, rows)
    else:
        connection.exec_driver_sql(_insert(table, connection.dialect.name), list(rows))


def _copy_rows(connection: Connection, table: str, rows: Sequence[Cells]) -> None:
    statement = f'COPY "{table}" ({_listed(table)}) FROM STDIN'
    driver: Any = connection.dialect.dbapi
    try:
        cursor: Any = connection.connection.cursor()
        with cursor, cursor.copy(statement) as copy:
            for cells in rows:
                copy.write_row(cells)
    except driver.Error as error:
        raise wrapped(statement, error, driver.Error) from error


@cache
def _insert(table: str, dialect: str) -> str:
    mark = "%s" if dialect == "postgresql" else "?"
    marks = ", ".join([mark] * len(columns_of(table)))
    return f'INSERT INTO "{table}" ({_listed(table)}) VALUES ({marks})'


@cache
def _listed(table: str) -> str:
    return ", ".join(f'"{column}"' for column in columns_of(table))
