"""The fifth form: answers, forecasts, planned trials, what opens a lot again, more of the record.

Adds three kinds of entry with their tables (in SQLite's words beside this file) and guards, columns,
which old entries leave empty, and indexes, and widens two lists of words: no byte of a row is
touched. A name that is new in the book is compared with those it has, which an index holds without
reading every delivery. Money is kept of currencies without two digits. Entries follow on the last
one and rows come with their entry: the guards of that are put on last, when all tables are there.
"""

from pathlib import Path

from alembic import op

from ledger.store.migrations.appends import guard_order
from ledger.store.migrations.kinds import add_kinds, rewrite_in_file, with_kinds
from ledger.store.migrations.versions.m0001_first_form import END
from ledger.store.migrations.versions.m0002_sums_limits_and_calls import NEW_KINDS as OLD_KINDS

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
    ("material", "additive", "TEXT", None),
    ("material", "nutrition", "TEXT", None),
    ("house", "doubts", "TEXT", None),
    *(
        ("formula", *column)
        for name in ("dose", "dose_into")
        for column in (
            (name, "INTEGER", f"{name} > 0"),
            (f"{name}_measure", "TEXT", f"{name}_measure IN {MEASURES}"),
            (f"{name}_written", "TEXT", None),
        )
    ),
)
"""Table, column, type in SQLite's words, and its condition."""
RECORDED = (
    ('"add"', "triturated_minutes BIGINT CONSTRAINT ck_add_triturated_minutes "
     "CHECK (triturated_minutes >= 0)"),
    ('"add"', "instrument TEXT"),
    ("filter", "paper TEXT CONSTRAINT fk_filter_paper REFERENCES lot (code)"),
    ("filter", "wetted_with TEXT CONSTRAINT fk_filter_wetted_with REFERENCES lot (code)"),
    ("labels", "stock TEXT CONSTRAINT fk_labels_stock REFERENCES lot (code)"),
    ("labels", "across TEXT CONSTRAINT ck_labels_across CHECK (across IN ('HOLD', 'SPECIMEN'))"),
    ("move", "witness TEXT"),
    ("house", "keep_months BIGINT CONSTRAINT ck_house_keep_months CHECK (keep_months >= 0)"),
    ("formula", "packaging TEXT"),
)  # fmt: skip
"""The table and what is added to it."""
RESTS = "('macerate', 'settle', 'chill')"
WIDER = "('macerate', 'settle', 'chill', 'warm')"
RESTED = {"rest": "purpose", "formula_steps": "rest_for"}
VERDICT = (
    "CREATE VIEW verdict AS SELECT lot, verdict, happened_at, stands_for FROM ( SELECT e.lot, "
    "j.verdict, e.happened_at, e.stands_for, ROW_NUMBER() OVER ( PARTITION BY e.lot ORDER BY "
    "e.happened_at DESC, e.stands_for DESC) AS nth FROM judge j JOIN in_force e ON e.seq = j.seq) "
    "AS ranked WHERE nth = 1"
)
REOPENING = (
    "CREATE VIEW reopening AS SELECT e.lot, e.happened_at, e.stands_for FROM in_force e "
    "LEFT JOIN rinse r ON r.seq = e.seq WHERE e.kind IN ('add', 'makeup') OR r.went_to = 'batch'"
)
_AFTER = (
    "NOT EXISTS (SELECT 1 FROM reopening r WHERE r.lot = lot.id AND (r.happened_at > {it}"
    ".happened_at OR (r.happened_at = {it}.happened_at AND r.stands_for > {it}.stands_for)))"
)
LOT_STATUS = (
    "CREATE VIEW lot_status AS SELECT lot.id AS lot, lot.code, CASE WHEN NOT EXISTS (SELECT 1 FROM "
    "in_force o WHERE o.stands_for = lot.id) THEN 'struck out' WHEN v.verdict = 'hold' THEN "
    f"'on hold' WHEN v.verdict = 'release' AND {_AFTER.format(it='v')} THEN 'released' "
    "WHEN v.verdict = 'reject' THEN 'rejected' WHEN v.verdict = 'rework' THEN 'to be reworked' "
    "WHEN v.verdict = 'recall' THEN 'recalled' WHEN lot.lot_type = 'packed' THEN 'packed' "
    "WHEN lot.lot_type <> 'made' THEN 'in stock' WHEN EXISTS (SELECT 1 FROM in_force f WHERE "
    f"f.lot = lot.id AND f.kind = 'finish' AND {_AFTER.format(it='f')}) THEN 'finished' "
    "ELSE 'being made' END AS status FROM lot LEFT JOIN verdict v ON v.lot = lot.id"
)
STATEMENTS = Path(__file__).with_suffix(".sql")
KEYS: dict[str, list[list[str]]] = {
    "answer": [["seq"]],
    "forecast": [["seq"]],
    "trial": [["seq"]],
    "trial_evenings": [["seq", "line"]],
    "trial_factors": [["seq", "line"]],
}


KINDS = with_kinds(OLD_KINDS, "answer", "forecast", "trial")
TABLES = (
    *(
        "add",
        "answer",
        "bottle",
        "check",
        "clean",
        "closing",
        "complaint",
        "contact",
        "count",
        "decant",
    ),
    *("deviation", "entry", "equipment", "filter", "finish", "forecast", "formula"),
    *("formula_keeping", "formula_lines", "formula_steps", "house", "judge", "labels"),
    *("level", "limit", "look", "lot"),
    *("makeup", "material", "material_constituents", "material_key", "measure", "move", "note"),
    *("party", "person", "person_key", "posting", "receipt", "rest", "rinse", "start"),
    *(
        "start_factors",
        "strike",
        "tree",
        "trial",
        "trial_evenings",
        "trial_factors",
        "withdrawal",
        "alembic_version",
    ),
)
"""All tables of a book; one that this form makes is to be named here too."""


def upgrade() -> None:
    statements = STATEMENTS.read_text(encoding="utf-8").removesuffix(END).split(END)
    add_kinds(statements, KEYS, OLD_KINDS, KINDS)
    op.execute("CREATE INDEX ix_move_party ON move (party)")
    op.execute("CREATE INDEX ix_receipt_supplier ON receipt (supplier)")
    op.execute("CREATE INDEX ix_receipt_material ON receipt (material)")
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    for table, column, kind, condition in COLUMNS:
        shape = kind if is_sqlite else kind.replace("INTEGER", "BIGINT")
        check = f" CONSTRAINT ck_{table}_{column} CHECK ({condition})" if condition else ""
        op.execute(f"ALTER TABLE {table} ADD COLUMN {column} {shape}{check}")
    for table, column in RECORDED:
        told = column.replace("BIGINT", "INTEGER") if is_sqlite else column
        op.execute(f"ALTER TABLE {table} ADD COLUMN {told}")
    if is_sqlite:
        rewrite_in_file(dict.fromkeys(RESTED, (RESTS, WIDER)))
    else:
        for table, column in RESTED.items():
            name = f"ck_{table}_{column}"
            op.execute(f"ALTER TABLE {table} DROP CONSTRAINT {name}")
            op.execute(f"ALTER TABLE {table} ADD CONSTRAINT {name} CHECK ({column} IN {WIDER})")
    op.execute("DROP VIEW lot_status")
    op.execute("DROP VIEW verdict")
    for view in (VERDICT, REOPENING, LOT_STATUS):
        op.execute(view)
    guard_order(TABLES, is_first=True)
