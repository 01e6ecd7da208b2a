"""What the dates of lots are reckoned from: their own dates, formulas, endings and readings.

Guarantees: two statements for a chunk of lots, and each lot is read once, however many are made of
it; only entries in force count.
"""

from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from typing import Any

from msgspec import Struct

from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.plain import read_instant
from ledger.domain.lots.dates import Dated
from ledger.store.engine.bare import Connection
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
        lot.lot_type, b.source,
        (SELECT m.sort FROM material m JOIN entry e ON e.seq = m.seq
            LEFT JOIN entry c ON c.corrects = e.seq
            WHERE m.code = r.material AND c.corrects IS NULL
            ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1) AS sort
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


class Known(Struct, frozen=True):
    """What is known of the dates of lots and of all they are made of, each lot by its number."""

    lots: dict[int, Dated]
    """Each lot by itself, with the last reading of its own syrup."""
    behind: dict[int, tuple[int, ...]]
    """Of each lot that was asked for, all it is made of, youngest first."""


def dated(connection: Connection, lots: Iterable[int]) -> Known:
    """Return what is known of the dates of lots and of all they are made of."""
    behind = {
        lot: tuple(sorted(sources, reverse=True))
        for lot, sources in made_of(connection, lots).items()
    }
    met = {lot for root, sources in behind.items() for lot in (root, *sources)}
    known = {lot: _dated(*cells) for lot, *cells in rows_of(connection, sorted(met))}
    return Known(known, behind)


def rows_of(connection: Connection, lots: Sequence[int]) -> list[Any]:
    """Return what is known of the dates of lots by themselves, as it stands in the book."""
    return [row for part in chunks(lots) for row in ask_for(connection, _KNOWN, part)]


def _dated(
    code: str,
    formula: str | None,
    version: int | None,
    told: str | None,
    finished_at: str | None,
    offset_min: int | None,
    brix_micro: int | None,
    lot_type: str,
    filled_from: str | None,
    sort: str | None,
) -> Dated:
    is_bought = lot_type == "received"
    is_syrup = not is_bought or sort == MaterialKind.SUGAR  # a juice that is read is none
    return Dated(
        code=code,
        told=date.fromisoformat(told) if told else None,
        formula=(formula, int(version or 0)) if formula else None,
        finished_on=_local_day(read_instant(finished_at), offset_min or 0) if finished_at else None,
        brix_mpct=int(brix_micro) // 1000 if brix_micro is not None and is_syrup else None,
        filled_from=filled_from,
        is_bought=is_bought,
    )


def _local_day(moment: datetime, offset_min: int) -> date:
    """Return the day on the house's clock, which is so many minutes before that of UTC.

    >>> late = datetime(2026, 3, 1, 23, 30)
    >>> [_local_day(late, offset).day for offset in (60, 29, -60)]
    [2, 1, 1]
    """
    return (moment + timedelta(minutes=int(offset_min))).date()
