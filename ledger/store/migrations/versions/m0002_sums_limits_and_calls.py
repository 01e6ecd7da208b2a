"""The second form: limits, parties, calls of a recall, withdrawn formulas, and more of the old kinds.

Only adds: five kinds of entry with their tables and guards, and columns that old entries leave
empty. The statements stand beside this file, in SQLite's words, and are never changed again.
"""

from collections.abc import Mapping
from pathlib import Path

from alembic import op

from ledger.store.form.guards import postgres_table_guards, sqlite_guards
from ledger.store.migrations.versions.m0001_first_form import END, for_server

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

STATEMENTS = Path(__file__).with_suffix(".sql")
KEYS: dict[str, list[list[str]]] = {
    "closing": [["seq"]],
    "contact": [["seq"]],
    "formula_keeping": [["seq", "line"]],
    "limit": [["seq"]],
    "party": [["seq"]],
    "withdrawal": [["seq"]],
}
OLD_KINDS = (
    "('house', 'person', 'material', 'formula', 'receipt', 'start', 'add', 'rest', 'filter', "
    "'rinse', 'decant', 'look', 'measure', 'makeup', 'finish', 'bottle', 'labels', 'move', "
    "'judge', 'check', 'complaint', 'count', 'note', 'deviation', 'clean', 'equipment', 'strike')"
)
NEW_KINDS = OLD_KINDS[:-1] + ", 'party', 'limit', 'withdrawal', 'contact', 'closing')"


def upgrade() -> None:
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    statements = STATEMENTS.read_text(encoding="utf-8").removesuffix(END).split(END)
    for statement in statements if is_sqlite else for_server(statements):
        op.execute(statement)
    for guard in sqlite_guards(KEYS) if is_sqlite else postgres_table_guards(list(KEYS)):
        op.execute(guard)
    if is_sqlite:
        rewrite_in_file({"entry": (OLD_KINDS, NEW_KINDS)})
    else:
        op.execute("ALTER TABLE entry DROP CONSTRAINT ck_entry_kind")
        op.execute(f"ALTER TABLE entry ADD CONSTRAINT ck_entry_kind CHECK (kind IN {NEW_KINDS})")


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
