"""The schema as it is stored, and the one that every book is made with.

Guarantees: `stored_schema` is the same text for the same tables, views, indexes and guards, in
whatever order they were made. Refuses: to mend anything; it tells what differs.
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache

from sqlalchemy import Connection, text

from ledger.store.form.kept import END, by_name, kept_by_name

_OBJECTS = text(
    # An underscore alone would stand for any letter.
    "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL "
    "AND NOT (name LIKE 'sqlite!_%' ESCAPE '!' AND type IN ('table', 'index')) "
    "ORDER BY CASE type WHEN 'table' THEN 1 WHEN 'index' THEN 2 WHEN 'view' THEN 3 ELSE 4 END, "
    "name"
)


def stored_schema(connection: Connection) -> str:
    """Return the CREATE statements of a SQLite book, each ending in a semicolon.

    Tables come first, then indexes, views and triggers, each by name. White space at the ends of
    lines, which depends on what wrote the statement, is left out.
    """
    statements = connection.execute(_OBJECTS).scalars()
    return "".join(f"{_folded(statement)}{END}" for statement in statements)


def schema_faults(connection: Connection) -> Iterator[str]:
    """Yield what differs from the schema that the book was made with, a sentence each."""
    if connection.dialect.name != "sqlite":
        from ledger.store.form.server import server_faults

        yield from server_faults(connection)
        return
    yield from _differences(by_name(stored_schema(connection)), kept_by_name())


def _differences(stored: Mapping[str, str], kept: Mapping[str, str]) -> Iterator[str]:
    for name in sorted(stored.keys() | kept.keys()):
        if name not in stored:
            yield f"The book has lost its {name}."
        elif name not in kept:
            yield f"The book holds the {name}, which it was not made with."
        elif stored[name] != kept[name]:
            yield f"The {name} is not as the book was made with it."


@lru_cache(maxsize=512)  # books are made by the same statements
def _folded(statement: str) -> str:
    lines = (" ".join(line.split()) for line in statement.splitlines())
    return "\n".join(line for line in lines if line)
