"""What the book knows of received lots: papers, readings, entry numbers, what they are of.

Guarantees: one statement for a chunk of lots; a correction of a receipt counts, a struck one does
not. Refuses: to choose between paper and reading.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from itertools import starmap
from operator import itemgetter
from typing import Any

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind, Measured
from ledger.domain.entries.plain import kept_entry
from ledger.store.engine.bare import Connection
from ledger.store.engine.memory import lasting
from ledger.store.engine.statements import (
    ask_column,
    ask_for,
    ask_named,
    chunks,
    go_by_index,
)
from ledger.store.read.queries import OF_TABLE

_LAST = """(SELECT m.{what} FROM measure m JOIN entry e ON e.seq = m.seq
        LEFT JOIN entry c ON c.corrects = e.seq
        WHERE e.lot = lot.id AND c.corrects IS NULL AND m.what = '{reading}'
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)"""
_RECEIVED = f"""
    SELECT lot.id, lot.code, lot.measure, o.seq, r.material, m.name, m.sort,
        r.abv_mpct, m.abv_mpct,
        {_LAST.format(what="reading_micro", reading="abv")},
        {_LAST.format(what="temp_mdegc", reading="abv")},
        r.density_mg_per_l, m.density_mg_per_l, m.density_temp_mdegc,
        {_LAST.format(what="reading_micro", reading="density")},
        {_LAST.format(what="temp_mdegc", reading="density")}
    FROM {{wanted}} w
    CROSS JOIN lot
    JOIN entry o ON o.stands_for = lot.id
        AND NOT EXISTS (SELECT 1 FROM entry d WHERE d.corrects = o.seq)
    JOIN receipt r ON r.seq = o.seq
    JOIN material_key k ON k.code = r.material
    JOIN material m ON m.seq = (
        SELECT n.seq FROM material n JOIN entry e ON e.seq = n.seq
        LEFT JOIN entry c ON c.corrects = e.seq
        WHERE n.code = k.code AND c.corrects IS NULL
        ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)
    WHERE lot.id = w.lot"""

_MATERIALS = """
    SELECT r.material FROM {wanted} w
    CROSS JOIN entry o JOIN receipt r ON r.seq = o.seq
    LEFT JOIN entry c ON c.corrects = o.seq
    WHERE o.stands_for = w.lot AND c.corrects IS NULL ORDER BY w.lot"""

_OF_MATERIALS = (
    f"SELECT e.body {OF_TABLE.format(table='material')} "
    "AND t.code IN (SELECT w.word FROM {wanted} w) ORDER BY e.happened_at, e.stands_for"
)

# Whatever its material was said to be at any time, it is looked at: more may be found than are.
_MAY_BE_SPIRIT = f"""
    SELECT o.stands_for FROM receipt r JOIN entry o ON o.seq = r.seq
    WHERE r.abv_mpct IS NOT NULL OR r.material IN (
        SELECT code FROM material WHERE abv_mpct IS NOT NULL OR sort = '{MaterialKind.ETHANOL}')
    UNION SELECT e.lot FROM measure m JOIN entry e ON e.seq = m.seq
    WHERE m.what = '{Measured.ABV}' AND e.lot IS NOT NULL"""

_CAME = """
    SELECT e.seq, e.happened_at, e.stands_for
    FROM {wanted} w CROSS JOIN entry e WHERE e.seq = w.lot"""
_NEVER = "none, and so after every day"
_DAY = f"""
    SELECT r.seq, COALESCE(r.best_before, '{_NEVER}')
    FROM {{wanted}} w CROSS JOIN receipt r WHERE r.seq = w.lot"""


class ReceivedRow(Struct, frozen=True):
    """A received lot as the book tells of it."""

    number: int
    """Its number."""
    code: str
    """Its code."""
    measure: Measure
    """In what it is counted."""
    entry: int
    """Number of the receipt in force."""
    material: str
    """Code of its material."""
    name: str
    """Its material's name."""
    sort: MaterialKind
    """What it is to the trade."""
    abv_mpct: int | None
    """Strength by its papers."""
    material_abv_mpct: int | None
    """Strength by its material."""
    read_abv_micro: int | None
    """The last reading of its strength."""
    read_abv_temp_mdegc: int | None
    """Temperature of that reading."""
    density_mg_per_l: int | None
    """Density by its papers."""
    material_density_mg_per_l: int | None
    """Density by its material."""
    material_density_temp_mdegc: int | None
    """Temperature of that density."""
    read_density_mg_per_l: int | None
    """The last reading of its density."""
    read_density_temp_mdegc: int | None
    """Temperature of that reading."""


def received(connection: Connection, lots: Sequence[int]) -> dict[str, ReceivedRow]:
    """Return what is known of those of the lots that were received, by code."""
    go_by_index(connection)
    rows = (row for part in chunks(lots) for row in ask_for(connection, _RECEIVED, part))
    return {row.code: row for row in starmap(_row, rows)}


def materials_of(connection: Connection, lots: Sequence[int]) -> list[str]:
    """Return the codes of the materials that lots are of, each once, as the lots came."""
    go_by_index(connection)
    rows = (row for part in chunks(sorted(lots)) for row in ask_for(connection, _MATERIALS, part))
    return list(dict.fromkeys(material for (material,) in rows))


def material_bodies(connection: Connection, codes: Sequence[str]) -> list[str]:
    """Return the texts that tell of some materials, by their codes, the last of each last."""
    return [body for (body,) in ask_named(connection, _OF_MATERIALS, codes)]


def materials(connection: Connection, codes: Iterable[str]) -> dict[str, Material]:
    """Return what the book last said of each of some materials, by its code, in their order."""
    wanted = list(dict.fromkeys(codes))
    bodies = material_bodies(connection, sorted(wanted)) if wanted else ()
    found = (kept_entry(body).facts for body in bodies)
    last = {item.code: item for item in found if isinstance(item, Material)}
    return {code: last[code] for code in wanted if code in last}


def deliveries(connection: Connection, material: str) -> list[tuple[int, date | None]]:
    """Return the receipts in force of a material, the first to expire first.

    Each is the number of its entry with its own date; those without one come last.
    """
    days = lasting(connection, _DAY, receipts_of(connection, material))
    rows = sorted(days.values(), key=itemgetter(1, 0))
    return [(seq, None if day == _NEVER else date.fromisoformat(day)) for seq, day in rows]


def receipts_of(connection: Connection, material: str) -> list[int]:
    """Return the numbers of the receipts in force of a material."""
    # By indexes alone: in a big book to read the rows takes longer than all else.
    query = (
        "SELECT r.seq FROM receipt r LEFT JOIN entry c ON c.corrects = r.seq "
        "WHERE r.material = :code AND c.corrects IS NULL"
    )
    return ask_column(connection, query, code=material)


def days_of(connection: Connection, receipts: Sequence[int]) -> list[Any]:
    """Return the dates that receipts give their lots, as they stand in the book."""
    return ask_for(connection, _DAY, receipts)


def moments_of(connection: Connection, receipts: Sequence[int]) -> list[Any]:
    """Return when receipts happened and which lots they opened, as it stands in the book."""
    return ask_for(connection, _CAME, receipts)


def as_they_came(connection: Connection, receipts: Sequence[int]) -> dict[int, int]:
    """Return the lots of receipts, by the numbers of these, in the order in which they came."""
    told = lasting(connection, _CAME, receipts)
    return {seq: lot for seq, _, lot in sorted(told.values(), key=itemgetter(1, 2))}


def with_a_strength(connection: Connection) -> dict[str, ReceivedRow]:
    """Return what is known of the received lots that may hold alcohol, by code."""
    return received(connection, sorted(ask_column(connection, _MAY_BE_SPIRIT)))


def _row(
    number: int,
    code: str,
    measure: str,
    entry: int,
    material: str,
    name: str,
    sort: str,
    *read: int | None,
) -> ReceivedRow:
    known = (Measure(measure), entry, material, name, MaterialKind(sort))
    return ReceivedRow(number, code, *known, *read)
