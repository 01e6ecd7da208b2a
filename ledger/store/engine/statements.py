"""Asking the engine: the short way from a statement to its rows.

Guarantees: the same statement, with values named as `:name`, on every engine; within an act nothing
is asked twice; what a driver raises is raised as elsewhere in the store. It goes past the machinery
that builds statements, which at two dozen statements an entry would take ten times as long as the
engine itself. Refuses: to open or close a transaction.
"""

import re
from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError

from ledger.store.engine.turn import question, turn_of, written

CHUNK = 1000
"""How many numbers one statement asks for."""
# Two colons are a cast in PostgreSQL, and no name.
_NAME = re.compile(r"(?<![:\w]):(\w+)")
_LISTS = {
    "sqlite": "(SELECT value AS lot FROM json_each(:wanted))",
    "postgresql": "(SELECT unnest(CAST(:wanted AS BIGINT[])) AS lot)",
}
_PINNED = (
    "SELECT set_config(name, 'off', true) FROM unnest(ARRAY['enable_hashjoin', "
    "'enable_mergejoin', 'enable_seqscan', 'enable_material', 'jit']) AS name"
)


def ask(connection: Connection, statement: str, **cells: object) -> list[Any]:
    """Run a statement and return its rows, tuples of cells as the driver gives them.

    Args:
        connection: A connection in a transaction.
        statement: SQL; a value stands in it as `:name`.
        cells: The values.
    """
    turn = turn_of(connection)
    if turn is None:
        return _ask(connection, statement, cells)
    asked = question(statement, cells)
    if asked not in turn.asked:
        turn.asked[asked] = _ask(connection, statement, cells)
    return list(turn.asked[asked])


def _ask(connection: Connection, statement: str, cells: Mapping[str, object]) -> list[Any]:
    told = _told(statement, connection.dialect.name)
    cursor = connection.connection.cursor()
    try:
        cursor.execute(told, cells)
        return list(cursor.fetchall())
    except Exception as error:
        raise _wrapped(connection, told, error) from error
    finally:
        cursor.close()


def run(connection: Connection, statement: str, cells: Sequence[object]) -> None:
    """Run a statement that answers nothing, its values by their places."""
    written(connection)
    cursor = connection.connection.cursor()
    try:
        cursor.execute(statement, cells)
    except Exception as error:
        raise _wrapped(connection, statement, error) from error
    finally:
        cursor.close()


def ask_one(connection: Connection, statement: str, **cells: object) -> Any:  # noqa: ANN401 - a cell
    """Run a statement and return the first cell of its first row, or None."""
    rows = ask(connection, statement, **cells)
    return rows[0][0] if rows else None


def ask_column(connection: Connection, statement: str, **cells: object) -> list[Any]:
    """Run a statement and return the first cell of each of its rows."""
    return [row[0] for row in ask(connection, statement, **cells)]


def ask_lots(connection: Connection, statement: str, **cells: object) -> list[int]:
    """Run a statement that answers a column `lot` and return it, in its order.

    A server sends all of them as one value, which takes less time to read than as many rows.
    """
    if connection.dialect.name != "postgresql":
        return ask_column(connection, statement, **cells)
    told = _told(f"SELECT array_agg(lot) FROM ({statement}) AS found", "postgresql")
    cursor = connection.connection.cursor(binary=True)
    try:
        cursor.execute(told, cells)
        ((lots,),) = cursor.fetchall()
        return lots or []
    except Exception as error:
        raise _wrapped(connection, told, error) from error
    finally:
        cursor.close()


def _wrapped(connection: Connection, statement: str, error: Exception) -> BaseException:
    driver: Any = connection.dialect.dbapi
    return DBAPIError.instance(statement, None, error, driver.Error, dialect=connection.dialect)


@cache
def _told(statement: str, dialect: str) -> str:
    """Return a statement in the words of a driver."""
    if dialect == "sqlite":
        return statement
    return _NAME.sub(r"%(\1)s", statement.replace("%", "%%"))


def chunks(numbers: Sequence[int], size: int = CHUNK) -> "list[Sequence[int]]":
    """Return `numbers` in parts of at most `size`."""
    return [numbers[start : start + size] for start in range(0, len(numbers), size)]


def ask_for(
    connection: Connection, statement: str, wanted: Sequence[int], **cells: object
) -> list[Any]:
    """Run a statement that reads the numbers asked for as `{wanted} w`, a column `w.lot`.

    It is the same text however many numbers it is asked for, so it is prepared once and its plan
    does not depend on how many there are. In such statements CROSS JOIN has SQLite begin with
    the few that are asked for: it keeps the order of the two sides.
    """
    name = connection.dialect.name
    numbers: object = list(wanted) if name == "postgresql" else str(list(wanted))
    return ask(connection, _listing(statement, name), wanted=numbers, **cells)


@cache
def _listing(statement: str, dialect: str) -> str:
    return statement.format(wanted=_LISTS[dialect])


def go_by_index(connection: Connection) -> None:
    """Let the rest of a transaction find rows by index only.

    A server that guesses how many rows there are may otherwise read the whole book for a few of
    them, the sooner the larger the book is. SQLite does as it is told by the words of a query.
    """
    if connection.dialect.name != "postgresql":
        return
    transaction = connection.get_transaction()
    # `info` outlives the transaction, and what was set for it does not.
    if connection.info.get(_PINNED) is not transaction:
        ask(connection, _PINNED)
        connection.info[_PINNED] = transaction
