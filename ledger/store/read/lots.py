"""Lots in brief, many at once: what a list, a trace or a stock sheet says of each.

Guarantees: a constant number of statements for a chunk of lots. Refuses: nothing; a struck lot has
a brief too, and its status says so.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection

from ledger.domain.amounts.quantity import Measure, tidy
from ledger.domain.entries.choices import LotType, Verdict
from ledger.domain.lots.lot import Status, status_of
from ledger.store.engine.statements import ask, ask_column, ask_for, chunks, go_by_index
from ledger.store.read.amounts import on_hand

_OPENED = """
    SELECT lot.id, lot.code, lot.lot_type, lot.measure, o.happened_at, o.offset_min,
        r.material, r.supplier, r.supplier_lot, s.product, s.product_kind, b.size_written,
        bulk.id AS bulk, COALESCE(r.best_before, s.best_before, b.best_before) AS best_before
    FROM {wanted} w
    CROSS JOIN lot
    LEFT JOIN entry o ON o.stands_for = lot.id AND o.kind <> 'strike'
        AND NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = o.seq)
    LEFT JOIN receipt r ON r.seq = o.seq
    LEFT JOIN start s ON s.seq = o.seq
    LEFT JOIN bottle b ON b.seq = o.seq
    LEFT JOIN lot bulk ON bulk.code = b.source
    WHERE lot.id = w.lot"""


class _Opened(NamedTuple):
    """A row of that query."""

    id: int
    code: str
    lot_type: str
    measure: str
    happened_at: str | None
    offset_min: int | None
    material: str | None
    supplier: str | None
    supplier_lot: str | None
    product: str | None
    product_kind: str | None
    size_written: str | None
    bulk: int | None
    best_before: str | None


_SAID_SINCE = """
    SELECT e.lot, j.verdict, l.grade
    FROM {wanted} w
    CROSS JOIN entry e
    LEFT JOIN entry c ON c.corrects = e.seq
    LEFT JOIN judge j ON j.seq = e.seq
    LEFT JOIN look l ON l.seq = e.seq
    WHERE e.lot = w.lot AND c.corrects IS NULL AND e.kind || '' IN ('judge', 'look', 'finish')
    ORDER BY e.happened_at, e.stands_for"""
_MATERIALS = (
    "SELECT m.code, m.name, m.sort FROM material m CROSS JOIN entry e "
    "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.seq = m.seq AND c.corrects IS NULL "
    "ORDER BY e.happened_at, e.stands_for"
)


class Brief(Struct, frozen=True):
    """A lot in brief."""

    lot: int
    """Its number."""
    code: str
    """Its code."""
    lot_type: str
    """received, made, rinse or packed."""
    measure: Measure
    """In what it is counted."""
    opened_at: str
    """When it was opened, UTC instant text; empty when struck."""
    offset_min: int
    """Offset that time was written in."""
    name: str
    """What it is, for people."""
    material: str | None
    """Code of its material, for a received lot."""
    sort: str | None
    """Kind of its material."""
    supplier: str | None
    """Who sent it."""
    supplier_lot: str | None
    """The supplier's lot."""
    product: str | None
    """Name of the product, for a made or packed lot."""
    product_kind: str | None
    """Kind of the product, for a made lot."""
    bulk: int | None
    """Number of the lot it was filled from."""
    status: Status
    """Where it stands."""
    on_hand: int
    """What is there, in its measure."""
    best_before: str | None
    """Its own best-before date, ISO."""
    grade: str | None
    """The grade of the last look at it."""


def briefs(connection: Connection, lots: Iterable[int]) -> dict[int, Brief]:
    """Return the briefs of lots by their numbers."""
    go_by_index(connection)
    wanted = list(dict.fromkeys(lots))
    materials = _materials(connection)
    found: dict[int, Brief] = {}
    for part in chunks(wanted):
        found |= _chunk(connection, part, materials)
    missing = [number for number in _bulks(found) if number not in found]
    bulks = dict(found)
    for part in chunks(missing):
        bulks |= _chunk(connection, part, materials)
    return {number: _named(found[number], bulks) for number in wanted if number in found}


def _bulks(found: dict[int, Brief]) -> dict[int, None]:
    return dict.fromkeys(brief.bulk for brief in found.values() if brief.bulk)


def _materials(connection: Connection) -> dict[str, tuple[str, str]]:
    """Return name and kind of every material by its code; the latest entry counts."""
    return {code: (name, sort) for code, name, sort in ask(connection, _MATERIALS)}


def _chunk(
    connection: Connection, lots: Sequence[int], materials: dict[str, tuple[str, str]]
) -> dict[int, Brief]:
    held = on_hand(connection, lots)
    verdicts, grades, finished = _said_since(connection, lots)
    found = {}
    for row in map(_Opened._make, ask_for(connection, _OPENED, lots)):
        name, sort = materials.get(row.material or "", (row.material, None))
        found[row.id] = Brief(
            lot=row.id,
            code=row.code,
            lot_type=row.lot_type,
            measure=Measure(row.measure),
            opened_at=row.happened_at or "",
            offset_min=row.offset_min or 0,
            name=_name(row, name),
            material=row.material,
            sort=sort,
            supplier=row.supplier,
            supplier_lot=row.supplier_lot,
            product=row.product,
            product_kind=row.product_kind,
            bulk=row.bulk,
            status=status_of(
                LotType(row.lot_type),
                is_struck=row.happened_at is None,
                is_finished=row.id in finished,
                verdict=verdicts.get(row.id),
            ),
            on_hand=held[row.id],
            best_before=row.best_before,
            grade=grades.get(row.id),
        )
    return found


def _said_since(
    connection: Connection, lots: Sequence[int]
) -> tuple[dict[int, Verdict], dict[int, str], set[int]]:
    """Return the last verdict on lots, the grade of the last look, and which are finished."""
    verdicts: dict[int, Verdict] = {}
    grades: dict[int, str] = {}
    finished: set[int] = set()
    for lot, verdict, grade in ask_for(connection, _SAID_SINCE, lots):
        if verdict:
            verdicts[lot] = Verdict(verdict)
        elif grade:
            grades[lot] = grade
        else:
            finished.add(lot)
    return verdicts, grades, finished


def _name(row: _Opened, material: str | None) -> str:
    if row.lot_type == "rinse":
        return "Rinse liquor"
    if row.lot_type == "packed":
        return tidy(row.size_written or "bottled")
    return material or row.product or "Struck lot"


def _named(brief: Brief, bulks: dict[int, Brief]) -> Brief:
    """Give a packed lot the name, product, kind and last look of its bulk."""
    bulk = bulks.get(brief.bulk) if brief.bulk else None
    if bulk is None:
        return brief
    return replace(
        brief,
        name=f"{bulk.name}, {brief.name}",
        product=bulk.name,
        product_kind=bulk.product_kind,
        grade=brief.grade or bulk.grade,
    )


def all_lots(connection: Connection) -> list[int]:
    """Return the numbers of all lots in the order they were opened."""
    return ask_column(connection, "SELECT id FROM lot ORDER BY id")


def lots_on_hand(connection: Connection) -> list[int]:
    """Return the numbers of the lots of which there is something, in the order they were opened."""
    go_by_index(connection)
    found: list[int] = []
    for part in chunks(all_lots(connection)):
        held = on_hand(connection, part)
        found += [lot for lot in part if held[lot]]
    return found
