"""Asking for many rows at once by their numbers, in the same words on every engine.

Guarantees: a statement is the same text however many numbers it is asked for, so it is prepared
once and its plan does not depend on how many there are. Refuses: nothing.
"""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Connection, text

CHUNK = 1000
"""How many numbers one statement asks for."""
_LISTS = {
    "sqlite": "(SELECT value AS lot FROM json_each(:wanted))",
    "postgresql": "(SELECT unnest(CAST(:wanted AS BIGINT[])) AS lot)",
}
_PINNED = text(
    "SELECT set_config(name, 'off', true) FROM unnest(ARRAY['enable_hashjoin', "
    "'enable_mergejoin', 'enable_seqscan', 'enable_material', 'jit']) AS name"
)


def chunks(numbers: Sequence[int], size: int = CHUNK) -> Iterator[Sequence[int]]:
    """Yield `numbers` in parts of at most `size`."""
    for start in range(0, len(numbers), size):
        yield numbers[start : start + size]


def ask(connection: Connection, query: str, wanted: Sequence[int], **cells: object) -> Any:  # noqa: ANN401 - a result, whose rows have no common type
    """Run a query that reads the numbers asked for as `{wanted} w`, a column `w.lot`."""
    name = connection.dialect.name
    numbers: object = list(wanted) if name == "postgresql" else str(list(wanted))
    return connection.execute(_text(query, name), {"wanted": numbers, **cells})


@cache
def _text(query: str, dialect: str) -> Any:  # noqa: ANN401 - a clause that only runs
    return text(query.format(wanted=_LISTS[dialect]))


def go_by_index(connection: Connection) -> None:
    """Let the rest of a transaction find rows by index only.

    A server that guesses how many rows there are may otherwise read the whole book for a few of
    them, the sooner the larger the book is. SQLite does as it is told by the words of a query.
    """
    if connection.dialect.name == "postgresql":
        connection.execute(_PINNED)
