"""The fifth form: names found by index, money of currencies without two digits, sizes of vessels.

Only adds. A name that is new in the book is compared with those it has, which an index holds without
reading every delivery. Old entries leave the new columns empty: no byte of a row is touched.
"""

from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

MEASURES = "('uL', 'mg', 'ueach')"
COLUMNS = (
    ("receipt", "cost_digits", "INTEGER", "cost_digits >= 0"),
    ("house", "hour_digits", "INTEGER", "hour_digits >= 0"),
    ("equipment", "holds", "INTEGER", "holds > 0"),
    ("equipment", "holds_measure", "TEXT", f"holds_measure IN {MEASURES}"),
    ("equipment", "holds_written", "TEXT", None),
)
"""Table, column, type in SQLite's words, and its condition."""


def upgrade() -> None:
    op.execute("CREATE INDEX ix_move_party ON move (party)")
    op.execute("CREATE INDEX ix_receipt_supplier ON receipt (supplier)")
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    for table, column, kind, condition in COLUMNS:
        shape = kind if is_sqlite else kind.replace("INTEGER", "BIGINT")
        check = f" CONSTRAINT ck_{table}_{column} CHECK ({condition})" if condition else ""
        op.execute(f"ALTER TABLE {table} ADD COLUMN {column} {shape}{check}")
