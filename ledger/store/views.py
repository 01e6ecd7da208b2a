"""Views: entries in force, movements, what is on hand, where each lot stands.

Guarantees: the one place in SQL that says what counts, readable by anybody with an SQL client.
Refuses: to be changed in place; a new form is a new migration.
"""

VIEWS: dict[str, str] = {
    "in_force": """
        SELECT e.* FROM entry e LEFT JOIN entry c ON c.corrects = e.seq
        WHERE c.seq IS NULL AND e.kind <> 'strike'""",
    "movement": """
        SELECT p.target AS lot, p.given AS change, e.happened_at, e.stands_for, e.seq
        FROM posting p JOIN in_force e ON e.seq = p.seq
        WHERE p.target IS NOT NULL AND p.given > 0
        UNION ALL
        SELECT p.source AS lot, -p.taken AS change, e.happened_at, e.stands_for, e.seq
        FROM posting p JOIN in_force e ON e.seq = p.seq
        WHERE p.source IS NOT NULL AND p.taken > 0""",
    "last_level": """
        SELECT lot, amount, happened_at, stands_for FROM (
            SELECT l.lot, l.amount, e.happened_at, e.stands_for,
                ROW_NUMBER() OVER (
                    PARTITION BY l.lot ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth
            FROM level l JOIN in_force e ON e.seq = l.seq) AS ranked
        WHERE nth = 1""",
    "on_hand": """
        SELECT lot.id AS lot, lot.code, lot.measure,
            CAST(COALESCE(v.amount, 0) + COALESCE(SUM(m.change), 0) AS BIGINT) AS amount
        FROM lot
        LEFT JOIN last_level v ON v.lot = lot.id
        LEFT JOIN movement m ON m.lot = lot.id AND (v.lot IS NULL
            OR m.happened_at > v.happened_at
            OR (m.happened_at = v.happened_at AND m.stands_for > v.stands_for))
        GROUP BY lot.id, lot.code, lot.measure, v.amount""",
    "verdict": """
        SELECT lot, verdict, happened_at FROM (
            SELECT e.lot, j.verdict, e.happened_at,
                ROW_NUMBER() OVER (
                    PARTITION BY e.lot ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth
            FROM judge j JOIN in_force e ON e.seq = j.seq) AS ranked
        WHERE nth = 1""",
    "lot_status": """
        SELECT lot.id AS lot, lot.code,
            CASE
                WHEN NOT EXISTS (SELECT 1 FROM in_force o WHERE o.stands_for = lot.id)
                    THEN 'struck out'
                WHEN v.verdict = 'hold' THEN 'on hold'
                WHEN v.verdict = 'release' THEN 'released'
                WHEN v.verdict = 'reject' THEN 'rejected'
                WHEN v.verdict = 'rework' THEN 'to be reworked'
                WHEN v.verdict = 'recall' THEN 'recalled'
                WHEN lot.lot_type = 'packed' THEN 'packed'
                WHEN lot.lot_type <> 'made' THEN 'in stock'
                WHEN EXISTS (SELECT 1 FROM in_force f
                    WHERE f.lot = lot.id AND f.kind = 'finish') THEN 'finished'
                ELSE 'being made'
            END AS status
        FROM lot LEFT JOIN verdict v ON v.lot = lot.id""",
}
"""Name and query of each view, in the order they can be created."""


def create_statements() -> list[str]:
    """Return the CREATE VIEW statements, in order."""
    return [f"CREATE VIEW {name} AS {' '.join(query.split())}" for name, query in VIEWS.items()]
