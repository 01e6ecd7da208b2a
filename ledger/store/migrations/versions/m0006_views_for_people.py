"""The sixth form: views for people, in the units they use and on the clock they wrote by.

Adds six views, which are read by whoever opens the book with a database tool and by no part of the
program, and one column, which old entries leave empty: no byte of a row is touched.
"""

from alembic import op

from ledger.store.form.views import on_server

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

LOCAL = "datetime({e}.happened_at, {e}.offset_min || ' minutes')"
STANDS = (
    "CASE WHEN c.seq IS NULL THEN 'in force' WHEN c.kind = 'strike' THEN 'struck' "
    "ELSE 'corrected' END"
)


def in_units(amount: str, measure: str, name: str) -> str:
    """Return the columns of an amount: millilitres, grams, pieces."""
    return ", ".join(
        f"CASE WHEN {measure} = '{kind}' THEN {amount} / {size} END AS {name}_{unit}"
        for kind, size, unit in (
            ("uL", "1000.0", "ml"),
            ("mg", "1000.0", "g"),
            ("ueach", "1000000.0", "each"),
        )
    )


ENTRIES = (
    "CREATE VIEW v_entries AS SELECT e.seq AS entry, e.kind, l.code AS lot, CASE WHEN "
    f"e.precision = 'day' THEN substr({LOCAL.format(e='e')}, 1, 10) ELSE "
    f"substr({LOCAL.format(e='e')}, 1, 16) END AS happened, e.precision AS known, "
    'e.recorded_at AS recorded_utc, e."by" AS made_by, e.origin, e.sheet, e.reason, e.corrects, '
    f"c.seq AS corrected_by, {STANDS} AS standing FROM entry e LEFT JOIN entry c ON "
    "c.corrects = e.seq LEFT JOIN lot l ON l.id = e.lot"
)
STOCK = (
    "CREATE VIEW v_stock AS SELECT h.code AS lot, COALESCE(r.material, s.product, bs.product, "
    "CASE WHEN l.lot_type = 'rinse' THEN 'rinse liquor' END) AS what, l.lot_type, st.status, "
    f"{in_units('h.amount', 'h.measure', 'on_hand')}, b.size / 1000.0 AS bottle_ml, "
    "COALESCE(r.best_before, b.best_before, s.best_before) AS best_before_given, r.supplier, "
    "r.supplier_lot FROM on_hand h JOIN lot l ON l.id = h.lot JOIN lot_status st ON st.lot = h.lot "
    "LEFT JOIN in_force o ON o.stands_for = h.lot LEFT JOIN receipt r ON r.seq = o.seq LEFT JOIN "
    '"start" s ON s.seq = o.seq LEFT JOIN bottle b ON b.seq = o.seq LEFT JOIN lot bl ON '
    "bl.code = b.source LEFT JOIN in_force bo ON bo.stands_for = bl.id LEFT JOIN "
    '"start" bs ON bs.seq = bo.seq'
)
MOVES = (
    "CREATE VIEW v_moves AS SELECT v.entry, v.kind, v.happened, s.code AS from_lot, t.code AS "
    "to_lot, p.place AS outside, "
    f"{in_units('p.taken', 'COALESCE(s.measure, t.measure)', 'taken')}, "
    f"{in_units('p.given', 'COALESCE(t.measure, s.measure)', 'given')}, m.party, m.document, "
    "v.made_by, v.standing FROM posting p JOIN v_entries v ON v.entry = p.seq LEFT JOIN lot s ON "
    "s.id = p.source LEFT JOIN lot t ON t.id = p.target LEFT JOIN move m ON m.seq = p.seq"
)
MONEY_OF = (
    "(SELECT h.currency FROM house h JOIN in_force e ON e.seq = h.seq ORDER BY e.happened_at DESC, "
    "e.stands_for DESC LIMIT 1) AS currency"
)
COIN = (
    "CASE COALESCE(r.cost_digits, 2) WHEN 0 THEN 1.0 WHEN 1 THEN 10.0 WHEN 2 THEN 100.0 "
    "WHEN 3 THEN 1000.0 ELSE 10000.0 END"
)
RECEIPTS = (
    "CREATE VIEW v_receipts AS SELECT v.entry, v.lot, v.happened, r.material, "
    f"{in_units('r.amount', 'r.amount_measure', 'amount')}, r.supplier, r.supplier_lot, "
    f"r.cost_minor / {COIN} AS cost, r.duty_minor / {COIN} AS duty, {MONEY_OF}, r.best_before, "
    "r.certificate, r.document, r.density_mg_per_l / 1000000.0 AS density_g_per_ml, "
    "r.abv_mpct / 1000.0 AS strength_vol_pct, v.made_by, v.standing FROM receipt r JOIN v_entries "
    "v ON v.entry = r.seq"
)
LOOKS = (
    "CREATE VIEW v_looks AS SELECT v.entry, v.lot, v.happened, k.grade, k.looked_at, k.dilution, "
    "k.ntu_milli / 1000.0 AS ntu, k.instrument, k.age_minutes / 60.0 AS age_h, k.temp_mdegc / "
    "1000.0 AS temp_c, k.ring, k.louche, k.sediment, k.floc, k.crystals, k.words, v.made_by, "
    "v.standing FROM look k JOIN v_entries v ON v.entry = k.seq"
)
MONEY = (
    "CREATE VIEW v_money AS SELECT entry, lot, happened, material, 'cost' AS what, cost AS amount, "
    "currency, cost / amount_ml AS per_ml, cost / amount_g AS per_g, cost / amount_each AS "
    "per_each, standing FROM v_receipts WHERE cost IS NOT NULL UNION ALL SELECT entry, lot, "
    "happened, material, 'duty' AS what, duty AS amount, currency, duty / amount_ml AS per_ml, "
    "duty / amount_g AS per_g, duty / amount_each AS per_each, standing FROM v_receipts WHERE duty "
    "IS NOT NULL"
)
VIEWS = (ENTRIES, STOCK, MOVES, RECEIPTS, LOOKS, MONEY)
"""In the order in which they are made: later ones read earlier ones."""


def upgrade() -> None:
    op.execute("ALTER TABLE house ADD COLUMN web TEXT")
    is_sqlite = op.get_bind().dialect.name == "sqlite"
    for view in VIEWS:
        # Alembic takes a per cent sign and a colon as they are here; there are none.
        op.execute(view if is_sqlite else on_server(view))
