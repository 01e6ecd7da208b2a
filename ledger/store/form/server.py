"""The schema of a book on a PostgreSQL server, held against the one that every book is made with.

Guarantees: tells every table, column, condition, view, guard, trigger and rule that was changed,
taken away or put in, whatever version the server is of: what a view says is compared with what the
server makes of the kept one, and so is a condition. Refuses: to change anything that outlasts the
transaction; the views and tables that it compares with are temporary ones and are taken back at
once.
"""

from collections.abc import Iterator, Mapping

from sqlalchemy import CheckConstraint, Connection, Table, text
from sqlalchemy.exc import DBAPIError

from ledger.store.engine.connections import cause
from ledger.store.form.appends import SERVER_FUNCTION, VERSION, guard_name
from ledger.store.form.guards import ERASE_FUNCTION, SENTENCE
from ledger.store.form.kept import kept_views
from ledger.store.form.tables import METADATA
from ledger.store.form.views import on_server

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
    "AND p.pronamespace = c.relnamespace AS is_sound, t.tgtype, p.proname "
    "FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_proc p ON p.oid = t.tgfoid "
    f"{_HERE.format('c')} AND NOT t.tgisinternal"
)
_GUARDS = text(
    "SELECT p.proname, p.prosrc, p.proconfig FROM pg_proc p "
    "JOIN pg_namespace n ON n.oid = p.pronamespace "
    "WHERE n.nspname = current_schema() AND p.proname IN ('guard_book', 'guard_erased', "
    "'guard_order')"
)
_SCHEMA = text("SELECT current_schema()")
_RULES = text(
    "SELECT r.rulename, c.relname FROM pg_rewrite r JOIN pg_class c ON c.oid = r.ev_class "
    # _RETURN is how a view is kept.
    f"{_HERE.format('c')} AND r.rulename <> '_RETURN'"
)
_VEILED = text(
    f"SELECT c.relname FROM pg_class c {_HERE.format('c')} "
    "AND (c.relrowsecurity OR c.relforcerowsecurity "
    "OR EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = c.oid)) ORDER BY c.relname"
)
_EVENTS = text("SELECT evtname FROM pg_event_trigger WHERE evtenabled <> 'D' ORDER BY evtname")
_IN = (
    "c.relnamespace = CASE WHEN :is_trial THEN pg_my_temp_schema() "
    "ELSE to_regnamespace(quote_ident(current_schema())) END"
)
"""Whether a table or view is one that was made for a trial, or one of the book."""
_SAYS = {
    "TABLE": text(
        "SELECT c.relname, k.conname, pg_get_constraintdef(k.oid) FROM pg_constraint k "
        f"JOIN pg_class c ON c.oid = k.conrelid WHERE k.contype = 'c' AND {_IN}"
    ),
    "VIEW": text(
        "SELECT c.relname, 'query', pg_get_viewdef(c.oid) FROM pg_class c "
        f"WHERE c.relkind = 'v' AND {_IN}"
    ),
}
"""What a server says of each condition of tables, and of each view."""
_KINDS = {"update": 16, "delete": 8, "truncate": 32}
"""What PostgreSQL calls these acts in a trigger's type (pg_trigger.h)."""
_BEFORE = 2
"""The same for a trigger that fires before the statement."""
_EACH_ROW_INSERTED = 1 + _BEFORE + 4
"""The same for one that fires before each row is added."""
_EACH_ROW_TAKEN_AWAY = 1 + _BEFORE + _KINDS["delete"]
"""The same for one that fires before each row is taken away."""
_TRIAL = "pottle_as_kept"
Said = dict[str, str]
"""What a server says of the parts of a thing, by their names."""
_AS_IS = {"no_parameters": True}
"""How a per cent sign stays one, where a driver would fill in a value."""


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
    yield from _check_faults(connection, things)
    yield from _guard_faults(connection, things)
    for name in connection.execute(_VEILED).scalars():
        yield f"The table {name} has row-level security, which it was not made with."
    for name in connection.execute(_EVENTS).scalars():
        yield f"The database has the event trigger {name}, which can change what the book does."
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


def _check_faults(connection: Connection, things: dict[str, str]) -> Iterator[str]:
    """Yield which conditions say something else than those that a book is made with."""
    tables = {name: table for name, table in METADATA.tables.items() if name in things}
    made = {name: _parts(connection, table) for name, table in tables.items()}
    stored = _said(connection, "TABLE", is_trial=False)
    for name, kept in _as_kept(connection, "TABLE", made):
        if isinstance(kept, DBAPIError):
            yield f"The conditions of the table {name} could not be compared: {cause(kept)}."
            continue
        # One that is missing is told with its table.
        is_now = stored.get(name, {})
        for condition in sorted(key for key, said in kept.items() if is_now.get(key, said) != said):
            yield f"The condition {condition} of {name} is not as the book was made with it."


def _parts(connection: Connection, table: Table) -> str:
    preparer = connection.dialect.identifier_preparer
    checks = (c for c in table.constraints if isinstance(c, CheckConstraint))
    parts = [
        *(f"{preparer.quote(c.name)} {c.type.compile(connection.dialect)}" for c in table.columns),
        *(f"CONSTRAINT {preparer.format_constraint(c)} CHECK ({c.sqltext})" for c in checks),
    ]
    return f"({', '.join(parts)})"


def _as_kept(
    connection: Connection, kind: str, made: Mapping[str, str]
) -> Iterator[tuple[str, Said | DBAPIError]]:
    """Yield what the server makes of each thing as it is kept, or why it makes nothing of it.

    All are made at once, for each that is made alone costs a journey or two; where one cannot be
    made it is seen which.
    """
    try:
        yield from _made(connection, kind, made).items()
    except DBAPIError:
        for name, words in made.items():
            try:
                yield from _made(connection, kind, {name: words}).items()
            except DBAPIError as error:
                yield name, error


def _made(connection: Connection, kind: str, made: Mapping[str, str]) -> dict[str, Said]:
    """Make things for a trial, and return what the server says of them when they are gone again."""
    trials = {f"{_TRIAL}_{number}": name for number, name in enumerate(made)}
    # Every role may make temporary ones, unless that was revoked.
    statements = [f"CREATE TEMP {kind} {trial} {made[name]}" for trial, name in trials.items()]
    with connection.begin_nested() as trial:
        connection.exec_driver_sql("; ".join(statements), execution_options=_AS_IS)
        said = _said(connection, kind, is_trial=True)
        trial.rollback()
    return {name: said.get(trial, {}) for trial, name in trials.items()}


def _said(connection: Connection, kind: str, *, is_trial: bool) -> dict[str, Said]:
    """Return what the server says of tables or views: those of a trial, or those of the book."""
    said: dict[str, Said] = {}
    for thing, part, words in connection.execute(_SAYS[kind], {"is_trial": is_trial}):
        said.setdefault(thing, {})[part] = words
    return said


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
        f"guard_{table}_{act}": (table, _BEFORE + kind, "guard_book")
        for table in METADATA.tables
        if table in things
        for act, kind in _KINDS.items()
    } | {
        guard_name(table): (table, _EACH_ROW_INSERTED, "guard_order")
        for table in (*METADATA.tables, VERSION)
        if table in things
    }
    if "details" in things:
        expected["guard_details_delete"] = ("details", _EACH_ROW_TAKEN_AWAY, "guard_erased")
    triggers = {row.tgname: row for row in connection.execute(_TRIGGERS)}
    for name, kept in sorted(expected.items()):
        row = triggers.pop(name, None)
        if not (row and row.is_sound and (row.relname, row.tgtype, row.proname) == kept):
            yield f"The book has lost its trigger {name}, or it is switched off."
    for name in sorted(triggers):
        yield f"The book holds the trigger {name}, which it was not made with."
    for name, table in connection.execute(_RULES):
        yield f"The book holds the rule {name} on {table}, which it was not made with."
    schema = connection.execute(_SCHEMA).scalar_one()
    found = sorted(
        (name, said.strip(), set_to) for name, said, set_to in connection.execute(_GUARDS)
    )
    path = [f"search_path={schema}, pg_temp"]
    if found != [
        ("guard_book", f"BEGIN RAISE EXCEPTION '{SENTENCE}'; END", None),
        ("guard_erased", ERASE_FUNCTION.strip(), path),
        ("guard_order", SERVER_FUNCTION.strip(), path),
    ]:
        yield "The guards of the book do not refuse as they were made to."


def _view_faults(connection: Connection, views: dict[str, str]) -> Iterator[str]:
    stored = _said(connection, "VIEW", is_trial=False)
    made = {name: f"AS {on_server(query)}" for name, query in views.items()}
    for name, kept in _as_kept(connection, "VIEW", made):
        if isinstance(kept, DBAPIError):
            yield f"The view {name} could not be compared: {cause(kept)}."
        elif stored.get(name) != kept:
            yield f"The view {name} is not as the book was made with it."
