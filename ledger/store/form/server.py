"""The schema of a book on a PostgreSQL server, held against the one that every book is made with.

Guarantees: tells every table, column, condition, view, guard, trigger and rule that was changed,
taken away or put in, whatever version the server is of: what a view says is compared with what the
server makes of the kept one. Refuses: to change anything that outlasts the transaction; the view
that it compares with is a temporary one and is taken back at once.
"""

from collections.abc import Iterator

from sqlalchemy import Connection, Table, text
from sqlalchemy.exc import DBAPIError

from ledger.store.engine.connections import cause
from ledger.store.form.guards import SENTENCE
from ledger.store.form.kept import kept_views
from ledger.store.form.tables import METADATA

_HERE = "JOIN pg_namespace n ON n.oid = {}.relnamespace WHERE n.nspname = current_schema()"
_THINGS = text(
    "SELECT CASE c.relkind WHEN 'r' THEN 'table' WHEN 'v' THEN 'view' ELSE 'relation' END, "
    f"c.relname FROM pg_class c {_HERE.format('c')} "
    # Indexes, tables of long values and types of rows come with the tables.
    "AND c.relkind NOT IN ('i', 'I', 't', 'c')"
)
_COLUMNS = text(
    "SELECT c.relname, a.attname, format_type(a.atttypid, a.atttypmod), a.attnotnull "
    "FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid "
    f"{_HERE.format('c')} AND c.relkind = 'r' AND a.attnum > 0 AND NOT a.attisdropped"
)
_CONDITIONS = text(
    "SELECT c.relname, k.conname FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid "
    f"{_HERE.format('c')} AND k.convalidated AND k.contype IN ('c', 'f', 'p', 'u')"
)
_TRIGGERS = text(
    "SELECT t.tgname, c.relname, t.tgenabled IN ('O', 'A') AND t.tgqual IS NULL "
    "AND p.proname = 'guard_book' AND p.pronamespace = c.relnamespace AS is_sound, t.tgtype "
    "FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_proc p ON p.oid = t.tgfoid "
    f"{_HERE.format('c')} AND NOT t.tgisinternal"
)
_GUARD = text(
    "SELECT p.prosrc FROM pg_proc p JOIN pg_namespace n ON n.oid = p.pronamespace "
    "WHERE n.nspname = current_schema() AND p.proname = 'guard_book'"
)
_RULES = text(
    "SELECT r.rulename, c.relname FROM pg_rewrite r JOIN pg_class c ON c.oid = r.ev_class "
    # _RETURN is how a view is kept.
    f"{_HERE.format('c')} AND r.rulename <> '_RETURN'"
)
_VIEW = text("SELECT pg_get_viewdef(to_regclass(:name))")
_KINDS = {"update": 16, "delete": 8, "truncate": 32}
"""What PostgreSQL calls these acts in a trigger's type (pg_trigger.h)."""
_BEFORE = 2
"""The same for a trigger that fires before the statement."""
_TRIAL = "pottle_view_as_kept"


def server_faults(connection: Connection) -> Iterator[str]:
    """Yield what differs from the schema that a book is made with, a sentence each."""
    things = {name: str(kind) for kind, name in connection.execute(_THINGS)}
    views = kept_views()
    known = {**dict.fromkeys((*METADATA.tables, "alembic_version"), "table")}
    known |= dict.fromkeys(views, "view")
    for name in sorted(things.keys() | known.keys()):
        if things.get(name) != known.get(name):
            if name in known:
                yield f"The book has lost its {known[name]} {name}."
            if name in things:
                yield f"The book holds the {things[name]} {name}, which it was not made with."
    yield from _table_faults(connection, things)
    yield from _guard_faults(connection, things)
    yield from _view_faults(connection, {name: views[name] for name in views if name in things})


def _table_faults(connection: Connection, things: dict[str, str]) -> Iterator[str]:
    columns: dict[str, set[tuple[str, str, bool]]] = {}
    for table, name, kind, is_needed in connection.execute(_COLUMNS):
        columns.setdefault(table, set()).add((name, kind, is_needed))
    conditions: dict[str, set[str]] = {}
    for table, name in connection.execute(_CONDITIONS):
        conditions.setdefault(table, set()).add(name)
    for name, table in METADATA.tables.items():
        if name in things and (
            columns.get(name) != _columns(connection, table)
            or conditions.get(name) != _conditions(connection, table)
        ):
            yield f"The table {name} is not as the book was made with it."


def _columns(connection: Connection, table: Table) -> set[tuple[str, str, bool]]:
    return {
        (column.name, column.type.compile(connection.dialect).lower(), not column.nullable)
        for column in table.columns
    }


def _conditions(connection: Connection, table: Table) -> set[str]:
    preparer = connection.dialect.identifier_preparer
    # By name alone, for each version prints their words its own way; every row is read anyway.
    named = (preparer.format_constraint(condition) for condition in table.constraints)
    return {name.strip('"') for name in named if name}


def _guard_faults(connection: Connection, things: dict[str, str]) -> Iterator[str]:
    expected = {
        f"guard_{table}_{act}": (table, _BEFORE + kind)
        for table in METADATA.tables
        if table in things
        for act, kind in _KINDS.items()
    }
    triggers = {row.tgname: row for row in connection.execute(_TRIGGERS)}
    for name, (table, kind) in sorted(expected.items()):
        row = triggers.pop(name, None)
        if row is None or not row.is_sound or (row.relname, row.tgtype) != (table, kind):
            yield f"The book has lost its trigger {name}, or it is switched off."
    for name in sorted(triggers):
        yield f"The book holds the trigger {name}, which it was not made with."
    for name, table in connection.execute(_RULES):
        yield f"The book holds the rule {name} on {table}, which it was not made with."
    sources = connection.execute(_GUARD).scalars().all()
    if [source.strip() for source in sources] != [f"BEGIN RAISE EXCEPTION '{SENTENCE}'; END"]:
        yield "The guards of the book do not refuse as they were made to."


def _view_faults(connection: Connection, views: dict[str, str]) -> Iterator[str]:
    for name, query in views.items():
        try:
            with connection.begin_nested() as trial:
                # Every role may make temporary views, unless that was revoked.
                connection.exec_driver_sql(f"CREATE TEMP VIEW {_TRIAL} AS {query}")
                kept = connection.execute(_VIEW, {"name": _TRIAL}).scalar_one()
                trial.rollback()
        except DBAPIError as error:
            yield f"The view {name} could not be compared: {cause(error)}."
            continue
        if connection.execute(_VIEW, {"name": name}).scalar_one() != kept:
            yield f"The view {name} is not as the book was made with it."
