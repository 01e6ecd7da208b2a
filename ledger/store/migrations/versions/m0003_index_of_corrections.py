"""The third form: an index of the entries that correct others, and of no others.

Only adds. Every reader asks of every entry whether another corrects it, and few are corrected: the
index of all entries by what they correct is nearly all nothing, and this one is some pages.
"""

from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.execute(
        "CREATE UNIQUE INDEX ix_entry_correction ON entry (corrects) WHERE corrects IS NOT NULL"
    )
