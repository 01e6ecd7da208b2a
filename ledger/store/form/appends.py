"""Guards of what is added: an entry comes after the last, and rows come with their entry.

Guarantees: whoever may add rows can add no entry but the next, no row but to the last entry, no
node of the tree but one that entry completes, and, without a reason, no moment of recording an hour
before the last. A server knows more: rows come in the transaction of their entry, and an entry's
hash is that of its text. Refuses: to read what a text says; verifying does.
"""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from sqlalchemy import Connection, text

from ledger.store.form.guards import SENTENCE

CLOCK_SENTENCE = "The book records nothing an hour before its last entry without a reason."
VERSION = "alembic_version"
"""The table of the book's version, which only a migration changes."""
FIRST = {"lot": "id", "person_key": "seq", "material_key": "seq"}
"""Tables of which a row comes before its entry, with the column of the entry's number."""
ENDING = "order"
"""How the names of these guards end."""
_NEXT = "COALESCE((SELECT MAX(seq) FROM entry), 0) + 1"
_LAST = "(SELECT MAX(seq) FROM entry)"
SERVER_FUNCTION = f"""
DECLARE
  last bigint := (SELECT max(seq) FROM entry);
  fits boolean;
BEGIN
  IF TG_TABLE_NAME = 'entry' THEN
    fits := NEW.seq = coalesce(last, 0) + 1
      AND NEW.leaf = sha256('\\x00'::bytea || convert_to(NEW.body, 'UTF8'));
    IF NEW.reason IS NULL AND NEW.recorded_at::timestamptz
      < (SELECT recorded_at::timestamptz - interval '1 hour' FROM entry WHERE seq = last) THEN
      RAISE EXCEPTION '{CLOCK_SENTENCE}';
    END IF;
  ELSIF TG_TABLE_NAME = 'lot' THEN
    fits := NEW.id = coalesce(last, 0) + 1;
  ELSIF TG_TABLE_NAME IN ('person_key', 'material_key') THEN
    fits := NEW.seq = coalesce(last, 0) + 1;
  ELSIF TG_TABLE_NAME = '{VERSION}' THEN
    fits := false;
  ELSE
    IF TG_TABLE_NAME = 'tree' THEN
      fits := NEW.height < 62 AND (NEW.place + 1) << NEW.height::integer = last;
    ELSE
      fits := NEW.seq = last;
    END IF;
    fits := fits AND (SELECT xmin::text::bigint FROM entry WHERE seq = last)
      = txid_current() & 4294967295;
  END IF;
  IF fits IS NOT TRUE THEN
    RAISE EXCEPTION '{SENTENCE}';
  END IF;
  RETURN NEW;
END"""
"""What the guards of a server do."""


def guard_name(table: str) -> str:
    """Return the name of a table's guard of order."""
    return f"guard_{table}_{ENDING}"


def sqlite_order(tables: Sequence[str]) -> list[str]:
    """Return the CREATE TRIGGER statements for SQLite."""
    statements = [_sqlite_guard(guard_name(table), table, _unfit(table)) for table in tables]
    if "entry" in tables:
        hour_before = "strftime('%Y-%m-%dT%H:%M:%SZ', recorded_at, '-1 hour')"
        back = (
            "NEW.reason IS NULL AND NEW.recorded_at < "
            f"(SELECT {hour_before} FROM entry WHERE seq = NEW.seq - 1)"
        )
        statements.append(_sqlite_guard("guard_entry_clock", "entry", back, CLOCK_SENTENCE))
    return statements


def _sqlite_guard(name: str, table: str, unfit: str, sentence: str = SENTENCE) -> str:
    return (
        f'CREATE TRIGGER {name} BEFORE INSERT ON "{table}" WHEN {unfit} '
        f"BEGIN SELECT RAISE(ABORT, '{sentence}'); END"
    )


def _unfit(table: str) -> str:
    if table == VERSION:
        return "true"
    if table == "tree":
        return f"((NEW.place + 1) << NEW.height) IS NOT {_LAST}"
    if table in FIRST:
        return f"NEW.{FIRST[table]} IS NOT {_NEXT}"
    return f"NEW.seq IS NOT {_NEXT if table == 'entry' else _LAST}"


def postgres_order(tables: Sequence[str], schema: str | None = None) -> list[str]:
    """Return the statements for PostgreSQL.

    Args:
        tables: The tables to be guarded.
        schema: Where the book is, to make the function too; None: it is there.
    """
    statements = []
    if schema is not None:
        statements.append(
            "CREATE FUNCTION guard_order() RETURNS trigger LANGUAGE plpgsql "
            # What a role puts into a schema of its own is not looked at.
            f'SET search_path = "{schema}", pg_temp AS $${SERVER_FUNCTION}$$'
        )
    return statements + [
        f'CREATE TRIGGER {guard_name(table)} BEFORE INSERT ON "{table}" '
        "FOR EACH ROW EXECUTE FUNCTION guard_order()"
        for table in tables
    ]


@contextmanager
def out_of_order(connection: Connection) -> Iterator[None]:
    """Let rows be put in table by table, many entries at once, by whoever owns the book.

    The guards are there again at the end; on an error the transaction is to be given up.
    """
    is_sqlite = connection.dialect.name == "sqlite"
    guards = _sqlite_guards(connection) if is_sqlite else _server_guards(connection)
    for off, _ in guards:
        connection.exec_driver_sql(off)
    yield
    if not is_sqlite:
        # A table with references that are still to be looked at cannot be changed.
        connection.exec_driver_sql("SET CONSTRAINTS ALL IMMEDIATE")
        connection.exec_driver_sql("SET CONSTRAINTS ALL DEFERRED")
    for _, on in guards:
        connection.exec_driver_sql(on)


def _sqlite_guards(connection: Connection) -> list[tuple[str, str]]:
    query = (
        "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' "
        f"AND (name LIKE 'guard!_%!_{ENDING}' ESCAPE '!' OR name = 'guard_entry_clock')"
    )
    found = connection.execute(text(query)).all()
    return [(f"DROP TRIGGER {name}", sql) for name, sql in found]


def _server_guards(connection: Connection) -> list[tuple[str, str]]:
    query = (
        "SELECT c.relname, t.tgname FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid "
        "JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = current_schema() "
        f"AND t.tgname LIKE 'guard!_%!_{ENDING}' ESCAPE '!'"
    )
    alter = 'ALTER TABLE "{}" {} TRIGGER "{}"'
    return [
        (alter.format(table, "DISABLE", name), alter.format(table, "ENABLE", name))
        for table, name in connection.execute(text(query))
    ]
