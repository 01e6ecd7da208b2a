"""Lots in brief, many at once: what a list, a trace or a stock sheet says of each.

Guarantees: a constant number of statements for a chunk of lots. Refuses: nothing; a struck lot has
a brief too, and its status says so.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, RowMapping, bindparam, text

from ledger.domain.lots import Status
from ledger.domain.quantity import Measure, tidy

CHUNK = 500
"""How many lots one statement asks for."""

_BRIEFS = text(
    """
    SELECT lot.id, lot.code, lot.lot_type, lot.measure, o.happened_at, o.offset_min,
        r.material, r.supplier, r.supplier_lot, COALESCE(m.name, r.material) AS material_name,
        m.sort, s.product, s.product_kind, b.size_written, b.count, bulk.id AS bulk,
        st.status, h.amount,
        COALESCE(r.best_before, s.best_before, b.best_before) AS best_before,
        (SELECT l.grade FROM entry e JOIN look l ON l.seq = e.seq
            LEFT JOIN entry c ON c.corrects = e.seq
            WHERE e.lot = lot.id AND c.seq IS NULL
            ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1) AS grade
    FROM lot
    LEFT JOIN in_force o ON o.stands_for = lot.id
    LEFT JOIN receipt r ON r.seq = o.seq
    LEFT JOIN material_key k ON k.code = r.material
    LEFT JOIN in_force mo ON mo.stands_for = k.seq
    LEFT JOIN material m ON m.seq = mo.seq
    LEFT JOIN start s ON s.seq = o.seq
    LEFT JOIN bottle b ON b.seq = o.seq
    LEFT JOIN lot bulk ON bulk.code = b.source
    JOIN lot_status st ON st.lot = lot.id
    JOIN on_hand h ON h.lot = lot.id
    WHERE lot.id IN :ids"""
).bindparams(bindparam("ids", expanding=True))


@dataclass(frozen=True, slots=True)
class Brief:
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
    wanted = list(dict.fromkeys(lots))
    found: dict[int, Brief] = {}
    for start in range(0, len(wanted), CHUNK):
        found |= _chunk(connection, wanted[start : start + CHUNK])
    missing = {brief.bulk for brief in found.values() if brief.bulk} - found.keys()
    bulks = found | (briefs(connection, missing) if missing else {})
    return {number: _named(found[number], bulks) for number in wanted if number in found}


def _chunk(connection: Connection, lots: Sequence[int]) -> dict[int, Brief]:
    rows = connection.execute(_BRIEFS, {"ids": list(lots)}).mappings()
    return {
        row["id"]: Brief(
            lot=row["id"],
            code=row["code"],
            lot_type=row["lot_type"],
            measure=Measure(row["measure"]),
            opened_at=row["happened_at"] or "",
            offset_min=row["offset_min"] or 0,
            name=_name(row["lot_type"], row["material_name"] or row["product"], row),
            material=row["material"],
            sort=row["sort"],
            supplier=row["supplier"],
            supplier_lot=row["supplier_lot"],
            product=row["product"],
            product_kind=row["product_kind"],
            bulk=row["bulk"],
            status=Status(row["status"]),
            on_hand=int(row["amount"]),
            best_before=row["best_before"],
            grade=row["grade"],
        )
        for row in rows
    }


def _name(lot_type: str, known: str | None, row: RowMapping) -> str:
    if lot_type == "rinse":
        return "Rinse liquor"
    if lot_type == "packed":
        return tidy(row["size_written"] or "bottled")
    return known or "Struck lot"


def _named(brief: Brief, bulks: dict[int, Brief]) -> Brief:
    """Give a packed lot the name, product, kind and last look of its bulk."""
    bulk = bulks.get(brief.bulk) if brief.bulk else None
    if bulk is None:
        return brief
    values = {name: getattr(brief, name) for name in Brief.__slots__}
    values |= {
        "name": f"{bulk.name}, {brief.name}",
        "product": bulk.name,
        "product_kind": bulk.product_kind,
        "grade": brief.grade or bulk.grade,
    }
    return Brief(**values)


def all_lots(connection: Connection) -> list[int]:
    """Return the numbers of all lots in the order they were opened."""
    return list(connection.execute(text("SELECT id FROM lot ORDER BY id")).scalars())
