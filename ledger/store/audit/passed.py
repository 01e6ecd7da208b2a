"""Passing over entries that fit, so that only the others of a damaged book are read row by row.

Guarantees: entries are passed over only if their texts have their hashes and all their rows are
what these say, even where the database has found its own storage damaged. That an entry before them
cannot be read is told of that one alone. Refuses: to tell what is wrong.
"""

from collections.abc import Iterator
from functools import cache

from sqlalchemy import BigInteger, Connection, LargeBinary, Table

from ledger.store.audit.file import TROUBLE
from ledger.store.audit.rows import Reader, number_name, tables
from ledger.store.audit.swift import UNLIKE, leaves, rows_fit
from ledger.store.form.tables import CHILDREN, DETAILS, MATERIAL_KEY, PERSON_KEY

_OPENED = "SELECT code, id FROM lot WHERE id BETWEEN ?1 AND ?2"


def passes(connection: Connection, reader: Reader, first: int, last: int) -> bool:
    """Tell whether all rows of some entries fit, and if so take up what they say.

    Args:
        connection: A connection in a transaction that reads.
        reader: What was met before them.
        first: Number of the first of the entries.
        last: Number of the last.
    """
    if connection.dialect.name != "sqlite":
        return False
    try:
        if any(connection.exec_driver_sql(query, (first, last)).first() for query in _unfit()):
            return False
        grown = leaves(connection, first, last)
        if grown is None or not rows_fit(connection, first, last):
            return False
        opened = connection.exec_driver_sql(_OPENED, (first, last))
        reader.pass_over(grown, {row.code: row.id for row in opened})
    except (*TROUBLE, *UNLIKE):
        return False
    return True


@cache
def _unfit() -> tuple[str, ...]:
    """Return statements that find what `rows_fit` does not look at, or need not in whole storage.

    Rows that give a name its first entry are few, and are left to the slow comparison.
    """
    return (
        *(f"SELECT 1 FROM {table.name} WHERE seq BETWEEN ?1 AND ?2" for table in _KEYS),
        *_strays(),
        *(_mistyped(table) for table in tables() if table is not DETAILS),
    )


_KEYS = (PERSON_KEY, MATERIAL_KEY)


def _strays() -> Iterator[str]:
    """Yield statements that find rows of lists whose entry has no row of its kind."""
    for kind, name in CHILDREN:
        yield (
            f'SELECT 1 FROM "{kind}_{name}" c LEFT JOIN "{kind}" t ON t.seq = c.seq '
            "WHERE c.seq BETWEEN ?1 AND ?2 AND t.seq IS NULL LIMIT 1"
        )


def _mistyped(table: Table) -> str:
    """Return the statement that finds a cell of another type than its column's."""
    wrong = " OR ".join(
        f"typeof(\"{column.name}\") NOT IN ('{_type(column.type)}', 'null')"
        for column in table.columns
    )
    return (
        f'SELECT 1 FROM "{table.name}" WHERE "{number_name(table)}" BETWEEN ?1 AND ?2 '
        f"AND ({wrong}) LIMIT 1"
    )


def _type(kind: object) -> str:
    if isinstance(kind, BigInteger):
        return "integer"
    return "blob" if isinstance(kind, LargeBinary) else "text"
