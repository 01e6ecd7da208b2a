"""Every table of the book as text, row by row.

Guarantees: all tables and all columns, in an order in which rows can be inserted, of the moment of
the transaction; a hash is told in hexadecimal, what is absent is empty. Refuses: to choose.
"""

from collections.abc import Iterator

from sqlalchemy import Connection

from ledger.store.engine.statements import ask
from ledger.store.form.columns import IN_ORDER, columns_of

TableRows = tuple[str, tuple[str, ...], list[tuple[str, ...]]]
"""The name of a table, its columns and its rows."""


def stored_tables(connection: Connection) -> Iterator[TableRows]:
    """Yield every table of the book."""
    for name in IN_ORDER:
        columns = columns_of(name)
        listed = ", ".join(f'"{column}"' for column in columns)
        # By the first two columns, which are the key of every table.
        rows = ask(connection, f'SELECT {listed} FROM "{name}" ORDER BY 1, 2')
        yield name, columns, [tuple(map(_text, row)) for row in rows]


def _text(value: object) -> str:
    if value is None:
        return ""
    return bytes(value).hex() if isinstance(value, bytes | memoryview) else str(value)
