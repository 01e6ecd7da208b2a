"""Guards: triggers that let rows be added and never changed or taken away.

Guarantees: on every table of the book, UPDATE and DELETE fail, and so does the INSERT OR REPLACE
that would rewrite a row; of the details of people alone rows may be taken away, those that an entry
says are forgotten. Alembic does not see triggers: a migration that makes a table anew must
put its guards back, and the kept schema tells when one did not.
"""

from collections.abc import Mapping, Sequence

SENTENCE = "The book is only ever added to."


_IS_FORGOTTEN = "EXISTS (SELECT 1 FROM forget_entries WHERE entry = OLD.seq AND is_kept = 0)"
ERASE_FUNCTION = f"""
BEGIN
  IF NOT {_IS_FORGOTTEN} THEN
    RAISE EXCEPTION '{SENTENCE}';
  END IF;
  RETURN OLD;
END"""
"""What the guard of details does on a server."""


def sqlite_guards(
    keys: Mapping[str, Sequence[Sequence[str]]], erasable: Sequence[str] = ()
) -> list[str]:
    """Return the CREATE TRIGGER statements for SQLite.

    Args:
        keys: For each table its unique keys, each a sequence of column names.
        erasable: The tables from which a row goes that an entry says is forgotten.
    """
    statements = []
    for table, uniques in keys.items():
        for act in ("UPDATE", "DELETE"):
            may = f"WHEN NOT {_IS_FORGOTTEN} " if act == "DELETE" and table in erasable else ""
            statements.append(
                f'CREATE TRIGGER guard_{table}_{act.lower()} BEFORE {act} ON "{table}" {may}'
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


def erasable_on_server(table: str, schema: str) -> list[str]:
    """Return the statements that guard, on PostgreSQL, a table from which rows may be erased.

    Args:
        table: The table.
        schema: Where the book is.
    """
    kept = postgres_table_guards([table])
    return [
        *(guard for guard in kept if f"guard_{table}_delete" not in guard),
        "CREATE FUNCTION guard_erased() RETURNS trigger LANGUAGE plpgsql "
        # What a role puts into a schema of its own is not looked at.
        f'SET search_path = "{schema}", pg_temp AS $${ERASE_FUNCTION}$$',
        f'CREATE TRIGGER guard_{table}_delete BEFORE DELETE ON "{table}" '
        "FOR EACH ROW EXECUTE FUNCTION guard_erased()",
    ]
