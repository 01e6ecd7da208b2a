"""What a migration that brings new kinds of entry does, on both engines.

Guarantees: tables with their guards, and the spine's list of kinds widened; no byte of a row is
touched. It is part of every migration that uses it, and so is never changed in what it does.
"""

from collections.abc import Mapping, Sequence

from alembic import op

from ledger.store.form.guards import postgres_table_guards, sqlite_guards
from ledger.store.migrations.versions.m0001_first_form import for_server


def with_kinds(kinds: str, *added: str) -> str:
    """Return a list of kinds, as a condition of the spine writes it, with more at its end.

    >>> with_kinds("('house', 'note')", "smell")
    "('house', 'note', 'smell')"
    """
    return "".join((kinds[:-1], *(f", '{kind}'" for kind in added), ")"))


def add_kinds(
    statements: Sequence[str], keys: Mapping[str, Sequence[Sequence[str]]], old: str, new: str
) -> None:
    """Make the tables of new kinds, guard them, and let the spine hold entries of them.

    Args:
        statements: What makes the tables, in SQLite's words.
        keys: For each new table its unique keys, each a sequence of column names.
        old: The spine's list of kinds before.
        new: The list from now on.
    """
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    for statement in statements if is_sqlite else for_server(list(statements)):
        op.execute(statement)
    for guard in sqlite_guards(keys) if is_sqlite else postgres_table_guards(list(keys)):
        op.execute(guard)
    if is_sqlite:
        rewrite_in_file({"entry": (old, new)})
    else:
        op.execute("ALTER TABLE entry DROP CONSTRAINT ck_entry_kind")
        op.execute(f"ALTER TABLE entry ADD CONSTRAINT ck_entry_kind CHECK (kind IN {new})")


def rewrite_in_file(changes: Mapping[str, tuple[str, str]]) -> None:
    """Rewrite conditions where they are written down, as SQLite documents it.

    ALTER TABLE cannot change a CHECK, and copying the spine would copy the whole book. See
    https://sqlite.org/lang_altertable.html, the simpler procedure of section 7: no byte of a row
    is touched.

    Args:
        changes: For each table what is written in its statement, and what is to stand there.
    """
    connection = op.get_bind()
    version = int(connection.exec_driver_sql("PRAGMA schema_version").scalar_one())
    connection.exec_driver_sql("PRAGMA writable_schema = ON")
    for table, (old, new) in changes.items():
        connection.exec_driver_sql(
            "UPDATE sqlite_schema SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name = ?",
            (old, new, table),
        )
    connection.exec_driver_sql(f"PRAGMA schema_version = {version + 1}")
    connection.exec_driver_sql("PRAGMA writable_schema = OFF")
