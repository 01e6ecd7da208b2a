"""What went into a lot, and what a vessel held, for the rules.

Guarantees: entries in force only; a few statements each, however many lots.
"""

import unicodedata
from collections.abc import Sequence
from datetime import datetime
from typing import NamedTuple

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import LotType, MaterialKind, ProductKind
from ledger.domain.entries.plain import instant_text
from ledger.domain.lots.control import Input, LastHeld
from ledger.domain.lots.lot import status_of
from ledger.domain.masters.formulas import Called
from ledger.store.engine.acts import foresee
from ledger.store.engine.bare import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.statements import ask, ask_column, ask_for
from ledger.store.read.queries import IN_FORCE
from ledger.store.read.stands import Standing, stands

_INTO = (
    "SELECT DISTINCT p.source FROM posting p JOIN entry e ON e.seq = p.seq "
    f"{IN_FORCE} AND p.target = :lot AND p.source IS NOT NULL AND e.stands_for <> :skip"
)
INTO_AND = (
    "SELECT array_agg(lot ORDER BY lot) FROM (SELECT source AS lot FROM "
    f"({_INTO}) AS into_it UNION SELECT id FROM lot WHERE code = ANY(:codes)) AS both_of"
)
"""On a server: what went into a lot, and some lots besides, by their numbers."""
_MAKERS = (
    "SELECT DISTINCT n.product, n.code FROM formula n "
    "WHERE NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = n.seq)"
)
_UNGUIDED = "SELECT MIN(seq), product FROM start WHERE formula IS NULL GROUP BY product"
# Bottles count as what they were filled from, so a packed lot has the start of its bulk.
_INPUTS = """
    SELECT lot.id, lot.code, lot.lot_type, lot.measure, o.seq AS opener,
        r.material, m.sort, s.formula, s.product, s.product_kind
    FROM {wanted} w
    CROSS JOIN lot
    LEFT JOIN entry o ON o.stands_for = lot.id AND o.kind <> 'strike'
        AND NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = o.seq)
    LEFT JOIN receipt r ON r.seq = o.seq
    LEFT JOIN bottle f ON f.seq = o.seq
    LEFT JOIN lot bulk ON bulk.code = f.source
    LEFT JOIN entry so ON so.stands_for = COALESCE(bulk.id, lot.id) AND so.kind <> 'strike'
        AND NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = so.seq)
    LEFT JOIN start s ON s.seq = so.seq
    LEFT JOIN material_key k ON k.code = r.material
    LEFT JOIN entry mo ON mo.stands_for = k.seq AND mo.kind <> 'strike'
        AND NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = mo.seq)
    LEFT JOIN material m ON m.seq = mo.seq
    WHERE lot.id = w.lot ORDER BY lot.id"""
HELD = (
    "SELECT e.kind, e.lot, COALESCE(s.vessel, r.vessel, k.vessel) AS vessel FROM entry e "
    "LEFT JOIN start s ON s.seq = e.seq LEFT JOIN rest r ON r.seq = e.seq "
    "LEFT JOIN clean k ON k.seq = e.seq "
    f"{IN_FORCE} AND e.stands_for <> :skip AND e.happened_at <= :at AND e.seq IN ("
    + " UNION ALL ".join(
        f"SELECT seq FROM {table} WHERE lower(vessel) IN (:vessel, :folded)"
        for table in ("start", "rest", "clean")
    )
    + ") ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1"
)
_SIZES = (
    "SELECT q.name, q.holds FROM equipment q JOIN entry e ON e.seq = q.seq "
    f"{IN_FORCE} AND q.holds IS NOT NULL ORDER BY e.happened_at, e.stands_for"
)
HELD_LOT = f"SELECT lot FROM ({HELD}) AS held"
"""The number of the lot that a vessel last held, by the cells of `held_cells`."""
PRODUCT_OF = (
    "SELECT lot.code, s.product, s.product_kind FROM lot JOIN entry o ON o.stands_for = lot.id "
    "JOIN start s ON s.seq = o.seq LEFT JOIN entry c ON c.corrects = o.seq "
    "WHERE lot.id = :lot AND c.corrects IS NULL"
)


_CALLED = (
    f"SELECT e.stands_for FROM entry e {IN_FORCE} AND e.seq IN "
    "(SELECT seq FROM receipt WHERE material = :material "
    "UNION ALL SELECT seq FROM start WHERE formula = :formula "
    "UNION ALL SELECT s.seq FROM {wanted} w JOIN start n ON n.seq = w.lot "
    "JOIN start s ON s.formula IS NULL AND s.product = n.product) ORDER BY e.stands_for"
)


def lots_called(connection: Connection, called: Called) -> list[int]:
    """Return the numbers of lots of a material, or of what a formula makes, in order of coming.

    What was made without a formula counts as what the formula of its product's name makes.
    """
    named = _named_like(connection, called.formula) if called.formula else []
    cells = {"material": called.material, "formula": called.formula}
    return [number for (number,) in ask_for(connection, _CALLED, named, **cells)]


def _named_like(connection: Connection, formula: str) -> list[int]:
    """Return a batch without a formula for each name, as it was written, of what one makes."""
    makers = makers_of(connection)
    starts = ask(connection, _UNGUIDED)
    return [number for number, product in starts if makers.get(_folded(product)) == formula]


def makers_of(connection: Connection) -> dict[str, str]:
    """Return the formula of each product by its name; of several the first by its code."""
    makers: dict[str, str] = {}
    for product, code in ask(connection, _MAKERS):
        name = _folded(product)
        makers[name] = min(code, makers.get(name, code))
    return makers


def _folded(name: str) -> str:
    """Return a name as it is compared: capitals, and how an accent was typed, do not matter.

    >>> _folded("CRE\u0300ME") == _folded("Cr\u00e8me")
    True
    """
    return unicodedata.normalize("NFC", name.casefold())


def numbers_into(connection: Connection, lot: int, skip: int = 0) -> list[int]:
    """Return the numbers of the lots that went into a lot, without the chain `skip`."""
    return ask_column(connection, _INTO, lot=lot, skip=skip)


class _Row(NamedTuple):
    """A row of the query for inputs."""

    id: int
    code: str
    lot_type: str
    measure: str
    opener: int | None
    material: str | None
    sort: str | None
    formula: str | None
    product: str | None
    product_kind: str | None


def inputs(connection: Connection, lots: Sequence[int]) -> tuple[Input, ...]:
    """Return lots as inputs, by their numbers."""
    if not lots:
        return ()
    foresee(connection, lambda foreseen: _ahead(foreseen, lots))
    rows = [_Row(*row) for row in ask_for(connection, _INPUTS, lots)]
    standing = stands(connection, lots)
    is_by_name = any(row.product and not row.formula for row in rows)
    makers = makers_of(connection) if is_by_name else {}
    return tuple(
        Input(
            code=row.code,
            measure=Measure(row.measure),
            status=status_of(
                LotType(row.lot_type),
                standing.get(row.id, Standing()).stand,
                is_struck=row.opener is None,
            ),
            material=row.material,
            sort=MaterialKind(row.sort) if row.sort else None,
            formula=row.formula or (makers.get(_folded(row.product)) if row.product else None),
            product_kind=ProductKind(row.product_kind) if row.product_kind else None,
        )
        for row in rows
    )


def _ahead(foreseen: Foreseen, lots: Sequence[int]) -> None:
    """Foretell what is asked of inputs."""
    foreseen.asks(inputs, lots)
    foreseen.asks(stands, lots)


def last_held(connection: Connection, vessel: str, at: datetime, skip: int = 0) -> LastHeld | None:
    """Return the batch that a vessel last held up to a moment, or None when it is clean.

    Capitals do not matter; SQLite lowers ASCII letters only, so both ways are asked for.
    """
    for kind, lot, held_in in ask(connection, HELD, **held_cells(vessel, at, skip)):
        if kind == "clean":
            return None
        for code, product, product_kind in ask(connection, PRODUCT_OF, lot=lot):
            return LastHeld(held_in, code, product, ProductKind(product_kind))
    return None


def held_cells(vessel: str, at: datetime, skip: int = 0) -> dict[str, object]:
    """Return the cells of the question what a vessel last held; see `last_held`."""
    ascii_only = "".join(letter.lower() if letter.isascii() else letter for letter in vessel)
    return {"vessel": ascii_only, "folded": vessel.lower(), "at": instant_text(at), "skip": skip}


def vessel_sizes(connection: Connection) -> dict[str, int]:
    """Return what vessels hold in µL, as last told, by their names with capitals folded."""
    return {name.casefold(): int(holds) for name, holds in ask(connection, _SIZES)}
