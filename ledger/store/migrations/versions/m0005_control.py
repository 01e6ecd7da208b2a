"""The fifth form: names by index, answers to complaints, what opens a lot again, money, vessels,
what a label declares, forecasts, more of the record.

Adds a kind of entry, columns, which old entries leave empty, and indexes, and widens two lists of
words: no byte of a row is touched. A name that is new in the book is compared with those it has,
which an index holds without reading every delivery. Money is kept of currencies without two digits.
Entries follow on the last one and rows come with their entry: the guards of that are put on last,
when all tables are there.
"""

from alembic import op

from ledger.store.migrations.appends import guard_order
from ledger.store.migrations.kinds import add_kinds, rewrite_in_file, with_kinds
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
FORECAST = """CREATE TABLE forecast (
    seq INTEGER NOT NULL,
    entry_kind TEXT NOT NULL,
    oils TEXT NOT NULL,
    carried TEXT,
    spirit_mpct INTEGER,
    clear_low_mpct INTEGER,
    clear_likely_mpct INTEGER,
    clear_high_mpct INTEGER,
    neat_low_milli INTEGER,
    neat_high_milli INTEGER,
    syrup_low_milli INTEGER,
    syrup_high_milli INTEGER,
    glass_low_milli INTEGER,
    glass_high_milli INTEGER,
    dose_ul INTEGER,
    own_readings INTEGER,
    own_least_micro INTEGER,
    own_most_micro INTEGER,
    CONSTRAINT pk_forecast PRIMARY KEY (seq),
    CONSTRAINT ck_forecast_carried CHECK (carried IN ('yes', 'edge', 'no')),
    CONSTRAINT ck_forecast_spirit_mpct CHECK (spirit_mpct >= 0),
    CONSTRAINT ck_forecast_clear_low_mpct CHECK (clear_low_mpct >= 0),
    CONSTRAINT ck_forecast_clear_likely_mpct CHECK (clear_likely_mpct >= 0),
    CONSTRAINT ck_forecast_clear_high_mpct CHECK (clear_high_mpct >= 0),
    CONSTRAINT ck_forecast_neat_low_milli CHECK (neat_low_milli >= 0),
    CONSTRAINT ck_forecast_neat_high_milli CHECK (neat_high_milli >= 0),
    CONSTRAINT ck_forecast_syrup_low_milli CHECK (syrup_low_milli >= 0),
    CONSTRAINT ck_forecast_syrup_high_milli CHECK (syrup_high_milli >= 0),
    CONSTRAINT ck_forecast_glass_low_milli CHECK (glass_low_milli >= 0),
    CONSTRAINT ck_forecast_glass_high_milli CHECK (glass_high_milli >= 0),
    CONSTRAINT ck_forecast_dose_ul CHECK (dose_ul >= 0),
    CONSTRAINT ck_forecast_own_readings CHECK (own_readings >= 0),
    CONSTRAINT ck_forecast_own_least_micro CHECK (own_least_micro >= 0),
    CONSTRAINT ck_forecast_own_most_micro CHECK (own_most_micro >= 0),
    CONSTRAINT fk_forecast_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
    CONSTRAINT ck_forecast_entry_kind CHECK (entry_kind = 'forecast')
)
 STRICT"""
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


OUTCOMES = "'explained', 'replaced', 'held', 'recalled', 'not-ours'"
ANSWER = f"""CREATE TABLE answer (
	seq INTEGER NOT NULL,
	entry_kind TEXT NOT NULL,
	complaint INTEGER NOT NULL,
	outcome TEXT NOT NULL,
	told_by TEXT,
	told_on TEXT,
	is_closed INTEGER,
	words TEXT,
	CONSTRAINT pk_answer PRIMARY KEY (seq),
	CONSTRAINT fk_answer_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
	CONSTRAINT ck_answer_entry_kind CHECK (entry_kind = 'answer'),
	CONSTRAINT ck_answer_complaint CHECK (complaint >= 0),
	CONSTRAINT ck_answer_outcome CHECK (outcome IN ({OUTCOMES})),
	CONSTRAINT ck_answer_told_on CHECK (length(told_on) = 10),
	CONSTRAINT ck_answer_is_closed CHECK (is_closed IN (0, 1)),
	CONSTRAINT fk_answer_complaint FOREIGN KEY(complaint) REFERENCES entry (seq),
	CONSTRAINT fk_answer_told_by FOREIGN KEY(told_by) REFERENCES person_key (initials)
)
 STRICT"""
ANSWER_DAYS = (
    "ALTER TABLE complaint ADD COLUMN answer_days INTEGER "
    "CONSTRAINT ck_complaint_answer_days CHECK (answer_days >= 0)"
)
KINDS = with_kinds(OLD_KINDS, "answer", "forecast")
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
    *("start_factors", "strike", "tree", "withdrawal", "alembic_version"),
)
"""All tables of a book; one that this form makes is to be named here too."""


def upgrade() -> None:
    keys = {"answer": [["seq"]], "forecast": [["seq"]]}
    add_kinds([ANSWER, ANSWER_DAYS, FORECAST], keys, OLD_KINDS, KINDS)
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
