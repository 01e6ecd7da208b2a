"""The fifth form: answers to complaints, names found by index, money of any digits, sizes of
vessels, what a label declares, doses, forecasts.

Only adds: a kind of entry with its table and guards, columns and indexes. A name that is new in the
book is compared with those it has, which an index holds without reading every delivery. Old entries
leave the new columns empty: no byte of a row is touched.
"""

from alembic import op

from ledger.store.migrations.kinds import add_kinds, with_kinds
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
