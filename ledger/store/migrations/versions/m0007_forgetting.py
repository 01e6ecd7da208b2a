"""The seventh form: details of people and parties beside their entries, names by language, draws.

Adds a kind of entry with its tables, a table of details from which rows may be erased that an entry
of that kind names, a table of a material's names, columns that old entries leave empty, and a view
of the names by which parties are shown; takes back two conditions that were too narrow. No byte of
a row is touched. Three of the views for people read the names from now on.
"""

from alembic import op

from ledger.store.form.guards import erasable_on_server, sqlite_guards
from ledger.store.form.views import on_server
from ledger.store.migrations.appends import guard_order
from ledger.store.migrations.kinds import add_kinds, rewrite_in_file, with_kinds
from ledger.store.migrations.versions.m0001_first_form import for_server
from ledger.store.migrations.versions.m0005_control import KINDS as OLD_KINDS
from ledger.store.migrations.versions.m0006_views_for_people import (
    MONEY,
    MOVES,
    RECEIPTS,
    STOCK,
)

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

FORGET = """CREATE TABLE forget (
    seq INTEGER NOT NULL,
    entry_kind TEXT NOT NULL,
    party TEXT,
    person TEXT,
    CONSTRAINT pk_forget PRIMARY KEY (seq),
    CONSTRAINT fk_forget_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
    CONSTRAINT ck_forget_entry_kind CHECK (entry_kind = 'forget'),
    CONSTRAINT fk_forget_person FOREIGN KEY(person) REFERENCES person_key (initials)
)
 STRICT"""
FORGET_ENTRIES = """CREATE TABLE forget_entries (
    seq INTEGER NOT NULL,
    line INTEGER NOT NULL,
    entry INTEGER NOT NULL,
    is_kept INTEGER NOT NULL,
    CONSTRAINT pk_forget_entries PRIMARY KEY (seq, line),
    CONSTRAINT ck_forget_entries_entry CHECK (entry >= 0),
    CONSTRAINT ck_forget_entries_is_kept CHECK (is_kept IN (0, 1)),
    CONSTRAINT fk_forget_entries_seq FOREIGN KEY(seq) REFERENCES forget (seq),
    CONSTRAINT fk_forget_entries_entry FOREIGN KEY(entry) REFERENCES entry (seq)
)
 WITHOUT ROWID,
 STRICT"""
NAMES = """CREATE TABLE material_names (
    seq INTEGER NOT NULL,
    line INTEGER NOT NULL,
    language TEXT NOT NULL,
    name TEXT NOT NULL,
    CONSTRAINT pk_material_names PRIMARY KEY (seq, line),
    CONSTRAINT fk_material_names_seq FOREIGN KEY(seq) REFERENCES material (seq)
)
 WITHOUT ROWID,
 STRICT"""
DETAILS = """CREATE TABLE details (
    seq INTEGER NOT NULL,
    salt TEXT NOT NULL,
    name TEXT,
    role TEXT,
    phone TEXT,
    email TEXT,
    address TEXT,
    words TEXT,
    CONSTRAINT pk_details PRIMARY KEY (seq),
    CONSTRAINT ck_details_salt CHECK (length(salt) = 64),
    CONSTRAINT fk_details_seq FOREIGN KEY(seq) REFERENCES entry (seq)
)
 STRICT"""
KEYS = {"forget": [["seq"]]} | {
    table: [["seq", "line"]] for table in ("forget_entries", "material_names")
}
KINDS = with_kinds(OLD_KINDS, "forget")
COLUMNS = (
    ("party", "code TEXT"),
    ("party", "commitment TEXT"),
    ("person", "commitment TEXT"),
    ("trial", "draw BIGINT CONSTRAINT ck_trial_draw CHECK (draw >= 0)"),
)
"""The table and what is added to it."""
NAMED = ("party", "person")
"""Tables whose name may stand beside the text from now on."""
PARTY_IN = {
    "party": "name",
    "move": "party",
    "receipt": "supplier",
    "complaint": "party",
    "contact": "party",
}
"""Where an entry names a party: the table and its column."""
SHOWN = (
    "CREATE VIEW party_shown AS SELECT stored, shown FROM (SELECT t.code AS stored, d.name AS "
    "shown, ROW_NUMBER() OVER (PARTITION BY t.code ORDER BY e.happened_at DESC, e.stands_for DESC) "
    "AS nth FROM party t JOIN in_force e ON e.seq = t.seq JOIN details d ON d.seq = t.seq WHERE "
    "t.code IS NOT NULL) AS ranked WHERE nth = 1"
) + "".join(
    f" UNION SELECT n.{column} AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON "
    f'x.seq = f.seq JOIN "{table}" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT '
    f"NULL AND n.{column} IS NOT NULL"
    for table, column in PARTY_IN.items()
)


def _shown(view: str, column: str) -> str:
    """Return a view that shows a party by the name it is shown by now."""
    name = column.partition(".")[2]
    told = view.replace(f"{column}, ", f"COALESCE(n.shown, {column}) AS {name}, ", 1)
    return f"{told} LEFT JOIN party_shown n ON n.stored = {column}"


VIEWS = (
    _shown(STOCK, "r.supplier"),
    _shown(MOVES, "m.party"),
    _shown(RECEIPTS, "r.supplier"),
    MONEY,
)


def upgrade() -> None:
    add_kinds([FORGET, FORGET_ENTRIES, NAMES], KEYS, OLD_KINDS, KINDS)
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    for table, column in COLUMNS:
        told = column.replace("BIGINT", "INTEGER") if is_sqlite else column
        op.execute(f"ALTER TABLE {table} ADD COLUMN {told}")
    if is_sqlite:
        rewrite_in_file(dict.fromkeys(NAMED, ("name TEXT NOT NULL", "name TEXT")))
    else:
        for table in NAMED:
            op.execute(f"ALTER TABLE {table} ALTER COLUMN name DROP NOT NULL")
    _add_details(is_sqlite=is_sqlite)
    guard_order(["forget", "forget_entries", "material_names", "details"])
    for view in ("v_money", "v_receipts", "v_moves", "v_stock"):
        op.execute(f"DROP VIEW {view}")
    for view in (SHOWN, *VIEWS):
        op.execute(view if is_sqlite else on_server(view))


def _add_details(*, is_sqlite: bool) -> None:
    connection = op.get_bind()
    op.execute(DETAILS if is_sqlite else for_server([DETAILS])[0])
    if is_sqlite:
        guards = sqlite_guards({"details": [["seq"]]}, ("details",))
    else:
        schema = str(connection.exec_driver_sql("SELECT current_schema()").scalar_one())
        guards = erasable_on_server("details", schema)
    for guard in guards:
        connection.exec_driver_sql(guard, execution_options={"no_parameters": True})
