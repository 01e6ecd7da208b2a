"""What went into a lot, and what a vessel held, for the rules.

Guarantees: entries in force only; one statement each. Refuses: to judge.
"""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import Connection, bindparam, text

from ledger.domain.control import Input, LastHeld
from ledger.domain.entries.words import MaterialKind, ProductKind
from ledger.domain.lots import Status
from ledger.domain.plain import instant_text
from ledger.domain.quantity import Measure
from ledger.store.queries import IN_FORCE

_INTO = text(
    "SELECT DISTINCT p.source FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.target = :lot AND p.source IS NOT NULL AND e.stands_for <> :skip"
)
_INPUTS = text(
    """
    SELECT lot.id, lot.code, lot.measure, st.status, r.material, m.sort, s.formula, s.product_kind
    FROM lot
    JOIN lot_status st ON st.lot = lot.id
    LEFT JOIN in_force o ON o.stands_for = lot.id
    LEFT JOIN receipt r ON r.seq = o.seq
    LEFT JOIN start s ON s.seq = o.seq
    LEFT JOIN material_key k ON k.code = r.material
    LEFT JOIN in_force mo ON mo.stands_for = k.seq
    LEFT JOIN material m ON m.seq = mo.seq
    WHERE lot.id IN :ids ORDER BY lot.id"""
).bindparams(bindparam("ids", expanding=True))
_HELD = text(
    " UNION ALL ".join(
        f"SELECT e.happened_at AS at, e.stands_for AS turn, e.kind, e.lot, t.vessel "
        f"FROM {table} t JOIN entry e ON e.seq = t.seq {IN_FORCE} AND e.stands_for <> :skip "
        "AND lower(t.vessel) IN (:vessel, :folded) AND e.happened_at <= :at"
        for table in ("start", "rest", "clean")
    )
    + " ORDER BY at DESC, turn DESC LIMIT 1"
)
_PRODUCT = text(
    "SELECT lot.code, s.product, s.product_kind FROM lot "
    "JOIN in_force o ON o.stands_for = lot.id JOIN start s ON s.seq = o.seq WHERE lot.id = :lot"
)


_CALLED = text(
    "SELECT o.stands_for FROM receipt r JOIN in_force o ON o.seq = r.seq "
    "WHERE r.material = :called UNION "
    "SELECT o.stands_for FROM start s JOIN in_force o ON o.seq = s.seq "
    "WHERE s.formula = :called ORDER BY 1"
)


def lots_called(connection: Connection, called: str) -> list[int]:
    """Return the numbers of lots of a material, or made by a formula, in the order they came."""
    return list(connection.execute(_CALLED, {"called": called}).scalars())


def numbers_into(connection: Connection, lot: int, skip: int = 0) -> list[int]:
    """Return the numbers of the lots that went into a lot, without the chain `skip`."""
    return list(connection.execute(_INTO, {"lot": lot, "skip": skip}).scalars())


def inputs(connection: Connection, lots: Sequence[int]) -> tuple[Input, ...]:
    """Return lots as inputs, by their numbers."""
    if not lots:
        return ()
    found = connection.execute(_INPUTS, {"ids": list(lots)}).mappings()
    return tuple(
        Input(
            code=row["code"],
            measure=Measure(row["measure"]),
            status=Status(row["status"]),
            material=row["material"],
            sort=MaterialKind(row["sort"]) if row["sort"] else None,
            formula=row["formula"],
            product_kind=ProductKind(row["product_kind"]) if row["product_kind"] else None,
        )
        for row in found
    )


def last_held(connection: Connection, vessel: str, at: datetime, skip: int = 0) -> LastHeld | None:
    """Return the batch that a vessel last held up to a moment, or None when it is clean.

    Capitals do not matter; SQLite lowers ASCII letters only, so both ways are asked for.
    """
    ascii_only = "".join(letter.lower() if letter.isascii() else letter for letter in vessel)
    names = {"vessel": ascii_only, "folded": vessel.lower()}
    cells = {**names, "at": instant_text(at), "skip": skip}
    found = connection.execute(_HELD, cells).first()
    if found is None or found.kind == "clean" or found.lot is None:
        return None
    batch = connection.execute(_PRODUCT, {"lot": found.lot}).first()
    if batch is None:
        return None
    return LastHeld(found.vessel, batch.code, batch.product, ProductKind(batch.product_kind))
