"""Putting rows into the tables: the statements of it, each made once.

Guarantees: rows go in as they are given, those of one table by one statement. Refuses: to decide
their order; `IN_ORDER` is one in which no row comes before another that it refers to.
"""

from collections.abc import Sequence
from functools import cache
from typing import Any

from sqlalchemy import Connection, Table
from sqlalchemy.exc import DBAPIError

from ledger.store.asking import run
from ledger.store.mapping import Cells
from ledger.store.tables import (
    CHILDREN,
    ENTRY,
    LEVEL,
    LOT,
    MATERIAL_KEY,
    PERSON_KEY,
    POSTING,
    TREE,
    TYPED,
)

IN_ORDER: tuple[Table, ...] = (
    LOT,
    PERSON_KEY,
    MATERIAL_KEY,
    ENTRY,
    *TYPED.values(),
    *CHILDREN.values(),
    POSTING,
    LEVEL,
    TREE,
)
"""All tables, in an order in which rows of many entries can be inserted."""


def insert_row(connection: Connection, table: Table, cells: Cells) -> None:
    """Insert one row."""
    run(connection, _insert(table, connection.dialect.name), cells)


def insert_many(connection: Connection, table: Table, rows: Sequence[Cells]) -> None:
    """Insert many rows of one table as fast as its engine takes them."""
    if connection.dialect.name == "postgresql":
        _copy_rows(connection, table, rows)
    else:
        connection.exec_driver_sql(_insert(table, connection.dialect.name), list(rows))


def _copy_rows(connection: Connection, table: Table, rows: Sequence[Cells]) -> None:
    statement = f'COPY "{table.name}" ({_columns(table)}) FROM STDIN'
    driver: Any = connection.dialect.dbapi
    try:
        cursor: Any = connection.connection.cursor()
        with cursor, cursor.copy(statement) as copy:
            for cells in rows:
                copy.write_row(cells)
    except driver.Error as error:
        raise DBAPIError.instance(statement, None, error, driver.Error) from error


@cache
def _insert(table: Table, dialect: str) -> str:
    mark = "%s" if dialect == "postgresql" else "?"
    marks = ", ".join([mark] * len(table.columns))
    return f'INSERT INTO "{table.name}" ({_columns(table)}) VALUES ({marks})'


def _columns(table: Table) -> str:
    return ", ".join(f'"{column.name}"' for column in table.columns)
