"""The fourth form: formulas call for what is made here, nothing can be counted, sums read an index.

Adds one column, which old entries leave empty, and takes back three conditions that were too narrow:
no byte of a row is touched. The indexes of the two ends of a movement hold what moved as well, so
that what a lot of thousands of draws still holds is summed without reading each of them.
"""

from alembic import op

from ledger.store.migrations.kinds import rewrite_in_file

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

WIDENED = {
    "formula_lines": ("material TEXT NOT NULL", "material TEXT"),
    "count": ("CHECK (amount > 0)", "CHECK (amount >= 0)"),
    "contact": ("CHECK (still_there > 0)", "CHECK (still_there >= 0)"),
}
"""For each table what is written in its statement, and what is to stand there."""


def upgrade() -> None:
    op.execute("ALTER TABLE formula_lines ADD COLUMN formula TEXT")
    op.execute("DROP INDEX ix_posting_source")
    op.execute("DROP INDEX ix_posting_target")
    op.execute("CREATE INDEX ix_posting_source ON posting (source, seq, taken)")
    op.execute("CREATE INDEX ix_posting_target ON posting (target, seq, given)")
    if op.get_bind().dialect.name == "sqlite":
        rewrite_in_file(WIDENED)
    else:
        op.execute("ALTER TABLE formula_lines ALTER COLUMN material DROP NOT NULL")
        for table, column in (("count", "amount"), ("contact", "still_there")):
            name = f"ck_{table}_{column}"
            op.execute(f"ALTER TABLE {table} DROP CONSTRAINT {name}")
            op.execute(f"ALTER TABLE {table} ADD CONSTRAINT {name} CHECK ({column} >= 0)")
