"""The eighth form: numbers of GS1 for house, parties and articles, and cases that have a number.

Adds a kind of entry with its table, a table of the house's articles, and columns, which old entries
leave empty: no byte of a row is touched.
"""

from alembic import op

from ledger.store.migrations.appends import guard_order
from ledger.store.migrations.kinds import add_kinds, with_kinds
from ledger.store.migrations.versions.m0007_forgetting import KINDS as OLD_KINDS

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

CASES = """CREATE TABLE cases (
    seq INTEGER NOT NULL,
    entry_kind TEXT NOT NULL,
    count INTEGER NOT NULL,
    holds INTEGER NOT NULL,
    first_case INTEGER NOT NULL,
    company_prefix TEXT,
    CONSTRAINT pk_cases PRIMARY KEY (seq),
    CONSTRAINT ck_cases_count CHECK (count >= 0),
    CONSTRAINT ck_cases_holds CHECK (holds >= 0),
    CONSTRAINT ck_cases_first_case CHECK (first_case >= 0),
    CONSTRAINT fk_cases_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
    CONSTRAINT ck_cases_entry_kind CHECK (entry_kind = 'cases')
)
 STRICT"""
ARTICLES = """CREATE TABLE house_articles (
    seq INTEGER NOT NULL,
    line INTEGER NOT NULL,
    product TEXT NOT NULL,
    gtin TEXT NOT NULL,
    size INTEGER,
    size_measure TEXT,
    size_written TEXT,
    CONSTRAINT pk_house_articles PRIMARY KEY (seq, line),
    CONSTRAINT ck_house_articles_size CHECK (size > 0),
    CONSTRAINT ck_house_articles_size_measure CHECK (size_measure IN ('uL', 'mg', 'ueach')),
    CONSTRAINT fk_house_articles_seq FOREIGN KEY(seq) REFERENCES house (seq)
)
 WITHOUT ROWID,
 STRICT"""
KEYS = {"cases": [["seq"]], "house_articles": [["seq", "line"]]}
KINDS = with_kinds(OLD_KINDS, "cases")
COLUMNS = (
    ("house", "gln"),
    ("house", "company_prefix"),
    ("party", "gln"),
    ("details", "gln"),
)
"""The table and the column of words that is added to it."""


def upgrade() -> None:
    add_kinds([CASES, ARTICLES], KEYS, OLD_KINDS, KINDS)
    for table, column in COLUMNS:
        op.execute(f"ALTER TABLE {table} ADD COLUMN {column} TEXT")
    guard_order(list(KEYS))
