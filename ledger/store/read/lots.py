"""Reading lots, many at once, as a list, a trace or a stock sheet tells them.

Guarantees: a constant number of statements for a chunk of lots; a struck lot is read too, and its
status says so.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import NamedTuple

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from ledger.domain.entries.choices import LotType, MaterialKind, Precision, ProductKind
from ledger.domain.entries.plain import read_instant
from ledger.domain.lots.lot import Lot, filled_from, name_of, status_of
from ledger.store.engine.acts import foresee
from ledger.store.engine.bare import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.statements import ask, ask_column, ask_for, chunks, go_by_index
from ledger.store.engine.turn import Found
from ledger.store.read.amounts import on_hand
from ledger.store.read.people import every_code, shown_names, shown_rows
from ledger.store.read.stands import Standing, stands

_OPENED = """
    SELECT lot.id, lot.code, lot.lot_type, lot.measure, o.happened_at, o.offset_min, o.precision,
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
    precision: str
    material: str | None
    supplier: str | None
    supplier_lot: str | None
    product: str | None
    product_kind: str | None
    size_written: str | None
    bulk: int | None
    best_before: str | None


_MATERIALS = (
    "SELECT m.code, m.name, m.sort FROM material m CROSS JOIN entry e "
    "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.seq = m.seq AND c.corrects IS NULL "
    "ORDER BY e.happened_at, e.stands_for"
)


# What lots of bottles were filled from, as far as it is none of the lots itself.
_BULKS = (
    "SELECT array_agg(id ORDER BY nth) FROM (SELECT bulk.id, MIN(nth) AS nth "
    "FROM unnest(CAST(:lots AS BIGINT[])) WITH ORDINALITY AS met(number, nth) "
    "JOIN entry o ON o.stands_for = number JOIN bottle b ON b.seq = o.seq "
    "JOIN lot bulk ON bulk.code = b.source LEFT JOIN entry c ON c.corrects = o.seq "
    "WHERE c.corrects IS NULL AND bulk.id <> ALL (CAST(:lots AS BIGINT[])) "
    "GROUP BY bulk.id) AS others"
)


class _Told(NamedTuple):
    """What the book tells of a lot by itself."""

    opened: _Opened
    on_hand: int
    standing: Standing


Materials = dict[str, tuple[str, MaterialKind]]
"""Name and kind of materials by their codes."""


def lots_by_number(connection: Connection, numbers: Iterable[int]) -> dict[int, Lot]:
    """Return lots by their numbers; their dates are those told, not yet reckoned."""
    go_by_index(connection)
    wanted = list(dict.fromkeys(numbers))
    foresee(connection, lambda foreseen: foresee_lots(foreseen, wanted))
    materials = material_names(connection)
    told = _told(connection, wanted)
    # What bottles were filled from is asked for once, however many lots were filled from it.
    filled = dict.fromkeys(lot.opened.bulk for lot in told.values() if lot.opened.bulk)
    others = [number for number in filled if number not in told]
    foresee(connection, lambda foreseen: foresee_lots(foreseen, others))
    behind = told | _told(connection, others)
    bulks = {number: _lot(behind[number], materials) for number in filled}
    return {
        number: _lot(told[number], materials, bulks.get(told[number].opened.bulk or 0))
        for number in wanted
        if number in told
    }


def foresee_lots(foreseen: Foreseen, wanted: Sequence[int] | Found) -> None:
    """Let a server be asked at once what is asked of some lots."""
    parts = [wanted] if isinstance(wanted, Found) else chunks(wanted)
    if all(foreseen.knows(_opened, part) for part in parts):
        return
    for reader in (material_names, shown_rows, every_code):
        foreseen.asks(reader)
    bulks = foreseen.finds("BIGINT[]", _BULKS, lots=wanted)
    for part in (*parts, bulks):
        for of_lots in OF_LOTS:
            foreseen.asks(of_lots, part)


def _opened(connection: Connection, numbers: Sequence[int]) -> list[_Opened]:
    return [_Opened._make(row) for row in ask_for(connection, _OPENED, numbers)]


OF_LOTS = (on_hand, stands, _opened)
"""What reads lots in brief by their numbers, each by one statement."""


def material_names(connection: Connection) -> Materials:
    """Return name and kind of every material by its code; the latest entry counts."""
    return {code: (name, MaterialKind(sort)) for code, name, sort in ask(connection, _MATERIALS)}


def _told(connection: Connection, numbers: Sequence[int]) -> dict[int, _Told]:
    told: dict[int, _Told] = {}
    shown = shown_names(connection)
    for part in chunks(numbers):
        held = on_hand(connection, part)
        standing = stands(connection, part)
        for row in _opened(connection, part):
            known = row._replace(supplier=shown.get(row.supplier or "", row.supplier))
            told[row.id] = _Told(known, held[row.id], standing.get(row.id, Standing()))
    return told


def _lot(told: _Told, materials: Materials, bulk: Lot | None = None) -> Lot:
    row, is_struck = told.opened, told.opened.happened_at is None
    lot_type = LotType(row.lot_type)
    name, sort = materials.get(row.material or "", (row.material, None))
    what = name or row.product or (bulk.name if bulk else "")
    lot = Lot(
        seq=row.id,
        code=row.code,
        lot_type=lot_type,
        measure=Measure(row.measure),
        opened_at=_when(row),
        name=name_of(lot_type, what, row.size_written or "", is_struck=is_struck),
        status=status_of(lot_type, told.standing.stand, is_struck=is_struck),
        on_hand=told.on_hand,
        material=row.material,
        sort=sort,
        supplier=row.supplier,
        supplier_lot=row.supplier_lot,
        product=row.product,
        product_kind=ProductKind(row.product_kind) if row.product_kind else None,
        best_before=date.fromisoformat(row.best_before) if row.best_before else None,
        grade=told.standing.grade,
    )
    return filled_from(lot, bulk) if bulk else lot


def _when(row: _Opened) -> When | None:
    if row.happened_at is None or row.offset_min is None:
        return None
    return When(read_instant(row.happened_at), row.offset_min, Precision(row.precision))


def all_lots(connection: Connection) -> list[int]:
    """Return the numbers of all lots in the order they were opened."""
    return ask_column(connection, "SELECT id FROM lot ORDER BY id")


def lots_on_hand(connection: Connection) -> list[int]:
    """Return the numbers of the lots of which there is something, in the order they were opened."""
    go_by_index(connection)
    lots: list[int] = []
    for part in chunks(all_lots(connection)):
        held = on_hand(connection, part)
        lots += [lot for lot in part if held[lot]]
    return lots


_NAMES = (
    "SELECT product FROM formula UNION SELECT product FROM start UNION SELECT name FROM material"
)


def is_made_or_bought(connection: Connection, name: str) -> bool:
    """Return whether a formula, a batch or a material is called so."""
    called = ask_column(connection, _NAMES)
    return name.casefold() in {each.casefold() for each in called if each}


class Stem(Struct, frozen=True):
    """What the book has of the codes that begin with a stem and a dash."""

    count: int
    """How many lots have such a code."""
    later: frozenset[str]
    """Of their codes those that may have a greater number than that, and others perhaps."""


# LIKE of a file knows no case and so would read all codes. The point comes right after the dash.
_BEGINS = {
    "sqlite": "code >= :begin AND code < substr(:begin, 1, length(:begin) - 1) || '.'",
    "postgresql": "code LIKE CAST(:begin AS TEXT) || '%'",
}
# A number has three digits at least, so that of those as long the later one is the greater text.
_OF_STEM = """
    WITH named AS (SELECT code, substr(code, length(:begin) + 1) AS rest FROM lot WHERE {begins}),
    counted AS (SELECT COUNT(*) AS count FROM named),
    told AS (SELECT count, CASE WHEN count < 1000 THEN substr(CAST(count + 1000 AS TEXT), 2)
                                ELSE CAST(count AS TEXT) END AS digits FROM counted)
    SELECT count, code FROM told LEFT JOIN named ON length(rest) > length(digits) + 2
    OR (length(rest) = length(digits) + 2 AND substr(rest, 1, length(digits)) > digits)"""


def codes_of_stem(connection: Connection, begin: str) -> Stem:
    """Return what the book has of the codes that begin so, by a stem and a dash."""
    query = _OF_STEM.format(begins=_BEGINS[connection.dialect.name])
    rows = ask(connection, query, begin=begin)
    return Stem(rows[0][0], frozenset(code for _, code in rows if code))
