"""What the dates of lots are reckoned from: their own dates, formulas, endings and readings.

Guarantees: two statements for a chunk of lots, and each lot is read once, however many are made of
it; only entries in force count.
"""

from collections.abc import Iterable
from datetime import date, datetime, timedelta

from sqlalchemy import Connection

from ledger.domain.entries.plain import read_instant
from ledger.domain.lots.dates import Dated
from ledger.store.engine.statements import ask_for, chunks
from ledger.store.read.reach import made_of

_KNOWN = """
    SELECT lot.id, lot.code, s.formula, s.formula_version,
        COALESCE(r.best_before, s.best_before, b.best_before) AS told,
        f.happened_at AS finished_at, f.offset_min,
        (SELECT m.reading_micro FROM measure m JOIN entry e ON e.seq = m.seq
            LEFT JOIN entry c ON c.corrects = e.seq
            WHERE e.lot = lot.id AND c.corrects IS NULL AND m.what = 'brix'
            ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1) AS brix_micro,
        lot.lot_type
    FROM {wanted} w
    CROSS JOIN lot
    LEFT JOIN entry o ON o.stands_for = lot.id
        AND NOT EXISTS (SELECT 1 FROM entry d WHERE d.corrects = o.seq)
    LEFT JOIN receipt r ON r.seq = o.seq
    LEFT JOIN start s ON s.seq = o.seq
    LEFT JOIN bottle b ON b.seq = o.seq
    LEFT JOIN entry f ON f.seq = (
        SELECT e.seq FROM entry e LEFT JOIN entry c ON c.corrects = e.seq
        WHERE e.lot = lot.id AND e.kind = 'finish' AND c.corrects IS NULL
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    WHERE lot.id = w.lot"""


def dated(connection: Connection, lots: Iterable[int]) -> dict[int, tuple[Dated, ...]]:
    """Return for each lot what is known of its date, then of all it is made of, youngest first."""
    behind = made_of(connection, lots)
    met = {lot: (lot, *sorted(sources, reverse=True)) for lot, sources in behind.items()}
    known = {
        lot: _dated(*cells)
        for chunk in chunks(sorted({lot for met_of_root in met.values() for lot in met_of_root}))
        for lot, *cells in ask_for(connection, _KNOWN, chunk)
    }
    return {root: tuple(known[lot] for lot in met_of_root) for root, met_of_root in met.items()}


def _dated(
    code: str,
    formula: str | None,
    version: int | None,
    told: str | None,
    finished_at: str | None,
    offset_min: int | None,
    brix_micro: int | None,
    lot_type: str,
) -> Dated:
    return Dated(
        code=code,
        told=date.fromisoformat(told) if told else None,
        formula=(formula, int(version or 0)) if formula else None,
        finished_on=_local_day(read_instant(finished_at), offset_min or 0) if finished_at else None,
        brix_mpct=None if brix_micro is None else int(brix_micro) // 1000,
        is_bought=lot_type == "received",
    )


def _local_day(moment: datetime, offset_min: int) -> date:
    return (moment + timedelta(minutes=int(offset_min))).date()
