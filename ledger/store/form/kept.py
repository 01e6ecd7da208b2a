"""The schema that every book of this version is made with, kept as a golden text.

Guarantees: it says what the migrations make, which a test holds it to; the schema of every book is
held against it.
"""

from collections.abc import Mapping
from functools import cache
from importlib.resources import files

END = ";\n"
"""What ends each statement."""


def kept_schema() -> str:
    """Return the schema that every SQLite book of this version is made with."""
    return files("ledger.store.form").joinpath("schema.sql").read_text(encoding="utf-8")


@cache
def kept_by_name() -> Mapping[str, str]:
    """Return its statements by what they make."""
    return by_name(kept_schema())


def kept_views() -> dict[str, str]:
    """Return the query of every view, by name, in words that both engines understand."""
    kept = kept_by_name()
    views = (kind.removeprefix("view ") for kind in kept if kind.startswith("view "))
    return {name: kept[f"view {name}"].partition(" AS ")[2] for name in views}


def by_name(schema: str) -> dict[str, str]:
    """Return the statements of a schema by what they make, such as "table entry"."""
    named = {}
    for statement in schema.split(END):
        words = statement.replace("(", " ").replace('"', "").split()
        if words:
            # CREATE TABLE name, CREATE UNIQUE INDEX name.
            kind = 2 if words[1] == "UNIQUE" else 1
            named[f"{words[kind].lower()} {words[kind + 1]}"] = statement
    return named
