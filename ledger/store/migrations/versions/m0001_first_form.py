"""The first form of the book: spine, typed tables, postings, tree, views and guards.

The statements stand beside this file, in SQLite's words, and are never changed again; a server gets
the same in its own.
"""

import re
from pathlib import Path

from alembic import op

from ledger.store.form.guards import postgres_guards, sqlite_guards

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

STATEMENTS = Path(__file__).with_suffix(".sql")
END = ";\n"
ONLY_SQLITE = re.compile(r"\s*\b(STRICT|WITHOUT ROWID)(,\s*(STRICT|WITHOUT ROWID))*$")
SERVER_TYPES = {"INTEGER": "BIGINT", "BLOB": "BYTEA"}
TO_TABLES_BELOW = re.compile(r",\n\t(CONSTRAINT fk_entry_(?:by|lot) [^\n,]*)")
"""The two references of the spine to tables that a server must have first."""

KEYS: dict[str, list[list[str]]] = {
    "add": [["seq"]],
    "bottle": [["seq"]],
    "check": [["seq"]],
    "clean": [["seq"]],
    "complaint": [["seq"]],
    "count": [["seq"]],
    "decant": [["seq"]],
    "deviation": [["seq"]],
    "entry": [["corrects"], ["seq"]],
    "equipment": [["seq"]],
    "filter": [["seq"]],
    "finish": [["seq"]],
    "formula": [["seq"]],
    "formula_lines": [["seq", "line"]],
    "formula_steps": [["seq", "line"]],
    "house": [["seq"]],
    "judge": [["seq"]],
    "labels": [["seq"]],
    "level": [["seq"]],
    "look": [["seq"]],
    "lot": [["code"], ["id"]],
    "makeup": [["seq"]],
    "material": [["seq"]],
    "material_constituents": [["seq", "line"]],
    "material_key": [["code"], ["seq"]],
    "measure": [["seq"]],
    "move": [["seq"]],
    "note": [["seq"]],
    "person": [["seq"]],
    "person_key": [["initials"], ["seq"]],
    "posting": [["seq", "line"]],
    "receipt": [["seq"]],
    "rest": [["seq"]],
    "rinse": [["seq"]],
    "start": [["seq"]],
    "start_factors": [["seq", "line"]],
    "strike": [["seq"]],
    "tree": [["height", "place"]],
}


def upgrade() -> None:
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    statements = STATEMENTS.read_text(encoding="utf-8").removesuffix(END).split(END)
    for statement in statements if is_sqlite else for_server(statements):
        op.execute(statement)
    for guard in sqlite_guards(KEYS) if is_sqlite else postgres_guards(list(KEYS)):
        op.execute(guard)


def for_server(statements: list[str]) -> list[str]:
    text = END.join(ONLY_SQLITE.sub("", statement) for statement in statements)
    for ours, theirs in SERVER_TYPES.items():
        text = re.sub(rf"\b{ours}\b", theirs, text)
    later = [f"ALTER TABLE entry ADD {key}" for key in TO_TABLES_BELOW.findall(text)]
    return [*TO_TABLES_BELOW.sub("", text).split(END), *later]
