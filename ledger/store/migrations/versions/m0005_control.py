"""The fifth form: names of suppliers and customers are found by index.

Only adds. A name that is new in the book is compared with those it has, which an index holds without
reading every delivery.
"""

from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.execute("CREATE INDEX ix_move_party ON move (party)")
    op.execute("CREATE INDEX ix_receipt_supplier ON receipt (supplier)")
