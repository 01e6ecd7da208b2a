"""The second form: limits, parties, calls of a recall, withdrawn formulas, and more of the old kinds.

Only adds: five kinds of entry with their tables and guards, and columns that old entries leave
empty. The statements stand beside this file, in SQLite's words, and are never changed again.
"""

from pathlib import Path

from ledger.store.migrations.kinds import add_kinds, with_kinds
from ledger.store.migrations.versions.m0001_first_form import END

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
NEW_KINDS = with_kinds(OLD_KINDS, "party", "limit", "withdrawal", "contact", "closing")


def upgrade() -> None:
    statements = STATEMENTS.read_text(encoding="utf-8").removesuffix(END).split(END)
    add_kinds(statements, KEYS, OLD_KINDS, NEW_KINDS)
