"""Asking the engine: the short way from a statement to its rows.

Guarantees: the same statement, with values named as `:name`, on every engine; within an act nothing
is asked twice; what a driver raises is raised as elsewhere in the store. It goes past the machinery
that builds statements, which at two dozen statements an entry would take ten times as long as the
engine itself. Refuses: to open or close a transaction.
"""

import json
import re
from collections.abc import Iterable, Sequence
from functools import cache
from typing import Any

from ledger.store.engine.bare import Connection, wrapped
from ledger.store.engine.turn import (
    Asked,
    Found,
    Heard,
    Part,
    Question,
    Turn,
    UnknownError,
    turn_of,
    written,
)

CHUNK = 1000
"""How many numbers one statement asks for."""
# Two colons are a cast in PostgreSQL, and no name.
_NAME = re.compile(r"(?<![:\w]):(\w+)")
_LISTS = {
    "sqlite": "(SELECT value AS lot FROM json_each(:wanted))",
    "postgresql": "(SELECT unnest(CAST(:wanted AS BIGINT[])) AS lot)",
}
_WORDS = {
    "sqlite": "(SELECT value AS word FROM json_each(:wanted))",
    "postgresql": "(SELECT unnest(CAST(:wanted AS TEXT[])) AS word)",
}
BY_INDEX = ("enable_hashjoin", "enable_mergejoin", "enable_seqscan", "enable_material", "jit")
"""What a server is not to try."""
_PINNED = (
    "SELECT set_config(name, 'off', true) FROM unnest(ARRAY["
    f"{', '.join(repr(name) for name in BY_INDEX)}]) AS name"
)


def ask(connection: Connection, statement: str, **cells: object) -> list[Any]:
    """Run a statement and return its rows, tuples of cells as the driver gives them.

    Args:
        connection: A connection in a transaction.
        statement: SQL; a value stands in it as `:name`.
        cells: The values.
    """
    return _answer(connection, Question(statement, cells))


def ask_once(connection: Connection, statement: str, **cells: object) -> list[Any]:
    """Run a statement as `ask` does, of rows that never change in a book once they are there."""
    return _answer(connection, Question(statement, cells, lasts=True))


def _answer(connection: Connection, asked: Question) -> list[Any]:
    turn = turn_of(connection)
    if turn is None:
        return _ask(connection, asked)
    if turn.heard is not None:
        turn.heard.append(asked)
        raise UnknownError
    key = asked.key
    if (rows := turn.answer_to(key)) is None:
        rows = _learnt(connection, turn, key, asked)
    if turn.is_far and not (asked.lasts and rows) and key not in turn.of_many:
        turn.used[key] = asked
    return list(rows)


def _learnt(connection: Connection, turn: Turn, key: Asked, asked: Question) -> list[Any]:
    if turn.wanted is not None:
        turn.wanted[key] = Heard(asked)
        raise UnknownError
    if turn.pending:
        every = again(turn) | {key: Heard(asked)}
        parts = [part_of(heard.asked, connection) for heard in every.values()]
        for (each, heard), rows in zip(every.items(), send(connection, turn, parts), strict=True):
            turn.learn(each, heard.asked, rows)
        return turn.answer_to(key) or []
    rows = _ask(connection, asked)
    turn.learn(key, asked, rows)
    return rows


def again(turn: Turn) -> dict[Asked, Heard]:
    """Return what an act that wrote asked before it did: it will ask all of it after it too."""
    return {key: Heard(asked) for key, asked in turn.used.items()} if turn.pending else {}


def _ask(connection: Connection, asked: Question) -> list[Any]:
    turn = turn_of(connection)
    if turn and turn.is_far:  # by itself a statement is prepared with a journey for that alone
        return together(connection, [part_of(asked, connection)])[0]
    driver: Any = connection.connection.driver_connection
    told, cells, is_binary, _ = asked
    how = {}
    if connection.dialect.name != "sqlite":
        told, how = _told(told), {"binary": is_binary}
    try:
        found: list[Any] = driver.execute(told, cells, **how).fetchall()
    except Exception as error:
        raise _wrapped(connection, told, error) from error
    return found


def run(connection: Connection, statement: str, cells: Sequence[object]) -> None:
    """Run a statement that answers nothing, its values by their places.

    To a server it is sent with all else that the act writes, when something is asked or it ends.
    """
    written(connection)
    turn = turn_of(connection)
    if turn and turn.is_far:
        turn.pending.append(Part(statement, cells))
        return
    driver: Any = connection.connection.driver_connection
    try:
        driver.execute(statement, cells)
    except Exception as error:
        raise _wrapped(connection, statement, error) from error


def send(connection: Connection, turn: Turn, further: Sequence[Part]) -> list[list[Any]]:
    """Send a server what an act wrote, and more, in one round trip; return the rows of the rest."""
    parts, turn.pending = turn.pending, []
    if parts:
        parts, turn.opening = [*turn.opening, *parts], []
        turn.used.clear()
        turn.of_many.clear()
    return together(connection, [*parts, *further])[len(parts) :]


def settle(connection: Connection) -> None:
    """Send a server what an act wrote and was not sent yet."""
    turn = turn_of(connection)
    if turn and turn.pending:
        send(connection, turn, [])


def together(connection: Connection, parts: Sequence[Part]) -> list[list[Any]]:
    """Run statements on a server in one round trip, and return the rows of each."""
    from ledger.store.engine.journey import answers  # for servers alone

    try:
        return answers(connection.connection.driver_connection, parts)
    except Exception as error:
        raise _wrapped(connection, "; ".join(part.statement for part in parts), error) from error


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
    wrapped = f"SELECT array_agg(lot) FROM ({statement}) AS found"
    ((lots,),) = _answer(connection, Question(wrapped, cells, is_binary=True))
    return lots or []


def _wrapped(connection: Connection, statement: str, error: Exception) -> BaseException:
    driver: Any = connection.dialect.dbapi
    return wrapped(statement, error, driver.Error)


def part_of(asked: Question, connection: Connection) -> Part:
    """Return a question in the words of a connection's driver."""
    is_file = connection.dialect.name == "sqlite"
    statement = asked.statement if is_file else _told(asked.statement)
    return Part(statement, asked.cells, asked.is_binary)


@cache
def _told(statement: str) -> str:
    """Return a statement in the words of the driver of a server."""
    return _NAME.sub(r"%(\1)s", statement.replace("%", "%%"))


def chunks(numbers: Sequence[int], size: int = CHUNK) -> "list[Sequence[int]]":
    """Return `numbers` in parts of at most `size`; what is still to be found is one."""
    if isinstance(numbers, Found):
        return [numbers]
    return [numbers[start : start + size] for start in range(0, len(numbers), size)]


def among(values: Iterable[object]) -> tuple[str, dict[str, object]]:
    """Return SQL that lists values, by a name for each, and the values by their names.

    SQLite takes no list for a value. Numbers are asked for by `ask_for`. Of no values it is NULL,
    which nothing equals: a server refuses an empty list.

    >>> among(["oil", "rum"])
    (':v0, :v1', {'v0': 'oil', 'v1': 'rum'})
    >>> among([])
    ('NULL', {})
    """
    cells = {f"v{number}": value for number, value in enumerate(values)}
    return ", ".join(f":{name}" for name in cells) or "NULL", cells


def ask_named(connection: Connection, statement: str, wanted: Sequence[str]) -> list[Any]:
    """Run a statement that reads the words asked for as `{wanted} w`, by `w.word`; as `ask_for`."""
    name = connection.dialect.name
    words: object = wanted if isinstance(wanted, Found) else list(wanted)
    if name != "postgresql":
        words = json.dumps(words)
    return ask(connection, statement.format(wanted=_WORDS[name]), wanted=words)


def ask_for(
    connection: Connection, statement: str, wanted: Sequence[int], **cells: object
) -> list[Any]:
    """Run a statement that reads the numbers asked for as `{wanted} w`, a column `w.lot`.

    It is the same text however many numbers it is asked for, so it is prepared once and its plan
    does not depend on how many there are. In such statements CROSS JOIN has SQLite begin with
    the few that are asked for: it keeps the order of the two sides.
    """
    name = connection.dialect.name
    numbers: object = wanted if isinstance(wanted, Found) else list(wanted)
    if name != "postgresql":
        numbers = str(numbers)
    return ask(connection, _listing(statement, name), wanted=numbers, **cells)


@cache
def _listing(statement: str, dialect: str) -> str:
    return statement.format(wanted=_LISTS[dialect])


def go_by_index(connection: Connection) -> None:
    """Let the rest of a transaction find rows by index only.

    A server that guesses how many rows there are may otherwise read the whole book for a few of
    them, the sooner the larger the book is. SQLite does as it is told by the words of a query.
    """
    turn = turn_of(connection)
    if connection.dialect.name != "postgresql" or (turn and turn.is_far):
        return  # an act on a server goes by index from its beginning
    transaction = connection.get_transaction()
    # `info` outlives the transaction, and what was set for it does not.
    if connection.info.get(_PINNED) is not transaction:
        ask(connection, _PINNED)
        connection.info[_PINNED] = transaction
