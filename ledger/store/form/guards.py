"""Guards: triggers that let rows be added and never changed or taken away.

Guarantees: on every table of the book, UPDATE and DELETE fail, and so does the INSERT OR REPLACE
that would rewrite a row. Alembic does not see triggers: a migration that makes a table anew must
put its guards back, and the kept schema tells when one did not.
"""

from collections.abc import Mapping, Sequence

SENTENCE = "The book is only ever added to."


def sqlite_guards(keys: Mapping[str, Sequence[Sequence[str]]]) -> list[str]:
    """Return the CREATE TRIGGER statements for SQLite.

    Args:
        keys: For each table its unique keys, each a sequence of column names.
    """
    statements = []
    for table, uniques in keys.items():
        for act in ("UPDATE", "DELETE"):
            statements.append(
                f'CREATE TRIGGER guard_{table}_{act.lower()} BEFORE {act} ON "{table}" '
                f"BEGIN SELECT RAISE(ABORT, '{SENTENCE}'); END"
            )
        # A REPLACE by another program's connection, which has not set recursive_triggers, meets no
        # guard of DELETE; so a row whose key is taken is refused before.
        taken = " OR ".join(
            "(" + " AND ".join(f'"{column}" = NEW."{column}"' for column in unique) + ")"
            for unique in uniques
        )
        statements.append(
            f'CREATE TRIGGER guard_{table}_insert BEFORE INSERT ON "{table}" '
            f'WHEN EXISTS (SELECT 1 FROM "{table}" WHERE {taken}) '
            f"BEGIN SELECT RAISE(ABORT, '{SENTENCE}'); END"
        )
    return statements


def postgres_guards(tables: Sequence[str]) -> list[str]:
    """Return the statements that guard the named tables on PostgreSQL."""
    function = (
        "CREATE FUNCTION guard_book() RETURNS trigger LANGUAGE plpgsql AS "
        f"$$ BEGIN RAISE EXCEPTION '{SENTENCE}'; END $$"
    )
    return [function, *postgres_table_guards(tables)]


def postgres_table_guards(tables: Sequence[str]) -> list[str]:
    """Return the statements that put the guards of a book that has them on further tables."""
    return [
        f'CREATE TRIGGER guard_{table}_{act.lower()} BEFORE {act} ON "{table}" '
        f"FOR EACH STATEMENT EXECUTE FUNCTION guard_book()"
        for table in tables
        for act in ("UPDATE", "DELETE", "TRUNCATE")
    ]
