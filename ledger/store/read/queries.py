"""Reading entries, names and amounts.

Guarantees: only entries in force are returned unless a function says otherwise; entries come by
when they happened, then by number. Refuses: to interpret; it returns entries and numbers.
"""

from collections.abc import Iterator
from datetime import datetime
from typing import Any

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Entry,
    FactsT,
    Formula,
    House,
    Limit,
    Material,
    Opened,
    Party,
    Person,
    Withdrawal,
    entries_of,
)
from ledger.domain.entries.canonical import MAX_INTEGER
from ledger.domain.entries.choices import LotType
from ledger.domain.entries.plain import UNREADABLE, instant_text, kept_entry
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_column, ask_once, ask_one
from ledger.store.read.people import shown_names, told


class LotRow(Struct, frozen=True):
    """A lot's identity."""

    seq: int
    """Number of the entry that opened it."""
    opened: Opened
    """Its code, type and measure."""


class Moment(Struct, frozen=True):
    """A place among the entries of a lot."""

    at: datetime
    """When it happened."""
    stands_for: int = MAX_INTEGER
    """Number that decides among entries of the same instant; by default after all of them."""


OF_TABLE = (  # the kind's own table first, which is short, and the spine by number
    "FROM {table} t CROSS JOIN entry e LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE e.seq = t.seq AND c.corrects IS NULL"
)
# Of the joined row it asks for `corrects` and not for `seq`: PostgreSQL then sees that no row is
# wanted, and looks into the small index of the entries that correct others.
IN_FORCE = "LEFT JOIN entry c ON c.corrects = e.seq WHERE c.corrects IS NULL AND e.kind <> 'strike'"


def lot_by_code(connection: Connection, code: str) -> LotRow | None:
    """Return the lot with that code, or None."""
    query = "SELECT id, code, lot_type, measure FROM lot WHERE code = :code"
    rows = ask_once(connection, query, code=code)
    return _lot(*rows[0]) if rows else None


def codes_ending_in(connection: Connection, ending: str) -> list[str]:
    """Return the codes of lots that end in `ending`, in order."""
    query = "SELECT code FROM lot WHERE code LIKE :pattern ESCAPE '\\' ORDER BY code"
    return ask_column(connection, query, pattern=pattern_of(ending))


def pattern_of(ending: str) -> str:
    r"""Return the pattern of what ends so, for LIKE, with what stands for itself marked.

    >>> print(pattern_of("1_5"))
    %1\_5
    """
    return "%" + ending.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_")


def all_codes(connection: Connection) -> Iterator[str]:
    """Yield the codes of all lots in the order they were opened."""
    yield from ask_column(connection, "SELECT code FROM lot ORDER BY id")


def entry(connection: Connection, seq: int) -> Entry | None:
    """Return the entry with that number, in force or not."""
    rows = ask_once(connection, "SELECT body FROM entry WHERE seq = :seq", seq=seq)
    return told(connection, rows[0][0]) if rows else None


def corrected_by(connection: Connection, seq: int) -> int | None:
    """Return the number of the entry that corrects or strikes this one, or None."""
    number: int | None = ask_one(connection, "SELECT seq FROM entry WHERE corrects = :seq", seq=seq)
    return number


def entries_of_lot(connection: Connection, lot: int, skip: int = 0) -> tuple[Entry, ...]:
    """Return a lot's entries in force, without the chain of corrections `skip`."""
    query = (
        f"SELECT e.body FROM entry e {IN_FORCE} AND e.stands_for <> :skip "
        "AND (e.lot = :lot OR e.stands_for = :lot) ORDER BY e.happened_at, e.stands_for"
    )
    bodies = ask_column(connection, query, lot=lot, skip=skip)
    return tuple(told(connection, body) for body in bodies)


def all_entries_of_lot(connection: Connection, lot: int) -> tuple[tuple[Entry, int | None], ...]:
    """Return every entry about a lot, with the number of what corrects it, in number order."""
    query = (
        "SELECT e.body, c.seq FROM entry e LEFT JOIN entry c ON c.corrects = e.seq "
        "WHERE e.lot = :lot OR e.stands_for = :lot ORDER BY e.happened_at, e.stands_for, e.seq"
    )
    return _with_corrections(connection, ask(connection, query, lot=lot))


def _with_corrections(
    connection: Connection, rows: list[Any]
) -> tuple[tuple[Entry, int | None], ...]:
    return tuple((told(connection, body), by) for body, by in rows)


def journal(
    connection: Connection, last: int, lot: int | None = None
) -> list[tuple[int, Entry | None, int | None]]:
    """Return the last entries, of a lot or of all, in number order.

    Args:
        connection: A connection in a transaction.
        last: How many; 0 for all.
        lot: Number of the lot.

    Returns:
        The number of each, the entry, None where its text cannot be read, and the number of what
        corrects it.
    """
    of_lot = "WHERE e.lot = :lot OR e.stands_for = :lot " if lot else ""
    query = (
        "SELECT e.seq, e.body, c.seq FROM entry e LEFT JOIN entry c ON c.corrects = e.seq "
        f"{of_lot}ORDER BY e.seq DESC LIMIT :last"
    )
    rows = ask(connection, query, last=last or 10**9, lot=lot)
    return [(seq, _or_none(connection, body), by) for seq, body, by in reversed(rows)]


def _or_none(connection: Connection, body: str) -> Entry | None:
    try:
        return told(connection, body)
    except UNREADABLE:
        return None


def chain(connection: Connection, stands_for: int) -> tuple[tuple[Entry, int | None], ...]:
    """Return the entries of a chain of corrections, with the number of what corrects each."""
    query = (
        "SELECT e.body, c.seq FROM entry e LEFT JOIN entry c ON c.corrects = e.seq "
        "WHERE e.stands_for = :number ORDER BY e.seq"
    )
    return _with_corrections(connection, ask(connection, query, number=stands_for))


def last_about_a_lot(connection: Connection, by: str) -> Entry | None:
    """Return the last entry that a person wrote about a lot, other than deliveries."""
    query = (
        "SELECT e.seq FROM entry e WHERE e.by = :by AND e.lot IS NOT NULL "
        # A delivery is not the lot in hand at the bench; a deviation is what the book wrote.
        "AND e.kind NOT IN ('receipt', 'deviation') ORDER BY e.seq DESC LIMIT 1"
    )
    seq: int | None = ask_one(connection, query, by=by)
    return entry(connection, seq) if seq else None


def people(connection: Connection) -> frozenset[str]:
    """Return the initials in the book."""
    return frozenset(ask_column(connection, "SELECT initials FROM person_key"))


def material_codes(connection: Connection) -> list[str]:
    """Return the codes of all materials, in order."""
    return ask_column(connection, "SELECT code FROM material_key ORDER BY code")


def material(connection: Connection, code: str) -> Material | None:
    """Return what the book last said of a material."""
    facts = _latest(connection, "material", " AND t.code = :code", code=code)
    return facts if isinstance(facts, Material) else None


def house(connection: Connection) -> House | None:
    """Return what the book last said of the house."""
    facts = _latest(connection, "house")
    return facts if isinstance(facts, House) else None


def parties(connection: Connection) -> tuple[Party, ...]:
    """Return what the book last said of each party, by name; who was forgotten by code."""
    said = sorted(entries_of_kind(connection, Party), key=lambda entry: entry.position)
    shown = shown_names(connection)
    last = {shown.get(entry.facts.code or "", entry.facts.name): entry.facts for entry in said}
    return tuple(last[name] for name in sorted(last))


def persons(connection: Connection) -> tuple[Person, ...]:
    """Return what the book last said of each person, by initials."""
    said = sorted(entries_of_kind(connection, Person), key=lambda entry: entry.position)
    last = {entry.facts.initials: entry.facts for entry in said}
    return tuple(last[initials] for initials in sorted(last))


def limits(connection: Connection) -> tuple[Limit, ...]:
    """Return all that the book says of limits, in the order in which it was said."""
    said = sorted(entries_of_kind(connection, Limit), key=lambda entry: entry.position)
    return tuple(entry.facts for entry in said)


def withdrawn(connection: Connection) -> frozenset[tuple[str, int]]:
    """Return the versions of formulas that are withdrawn, by code."""
    facts = (entry.facts for entry in entries_of_kind(connection, Withdrawal))
    return frozenset((withdrawal.code, withdrawal.version) for withdrawal in facts)


def formulas(connection: Connection, code: str | None = None) -> tuple[Formula, ...]:
    """Return the versions of a formula, or of all, oldest first."""
    where = " AND t.code = :code" if code else ""
    query = f"SELECT e.body {OF_TABLE.format(table='formula')}{where} ORDER BY t.code, t.version"
    facts = (kept_entry(body).facts for body in ask_column(connection, query, code=code))
    return tuple(item for item in facts if isinstance(item, Formula))


def _latest(connection: Connection, table: str, where: str = "", **cells: object) -> object:
    query = (
        f"SELECT e.body {OF_TABLE.format(table=table)}{where} "
        "ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1"
    )
    body = ask_one(connection, query, **cells)
    return kept_entry(body).facts if body else None


def entries_of_kind(connection: Connection, kind: type[FactsT]) -> tuple[Entry[FactsT], ...]:
    """Return the entries in force of one kind, by number."""
    table = f'"{kind.KIND}"'
    query = f"SELECT e.body {OF_TABLE.format(table=table)} ORDER BY e.seq"
    bodies = ask_column(connection, query)
    return tuple(entries_of((told(connection, body) for body in bodies), kind))


def draws_on(connection: Connection, lot: int, until: datetime) -> tuple[Entry, ...]:
    """Return the entries in force that took of a lot for another up to a moment, in order."""
    query = (
        f"SELECT e.body FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE} "
        "AND p.source = :lot AND p.target IS NOT NULL AND e.happened_at <= :until "
        "ORDER BY e.happened_at, e.stands_for"
    )
    bodies = ask_column(connection, query, lot=lot, until=instant_text(until))
    # An entry may take of a lot by several movements.
    return tuple(map(kept_entry, dict.fromkeys(bodies)))


def entries_about(connection: Connection, seq: int) -> int:
    """Return how many entries in force speak of the lot that entry `seq` opened, but itself."""
    query = (
        "SELECT COUNT(*) FROM (SELECT e.seq FROM entry e "
        f"{IN_FORCE} AND e.lot = :lot AND e.stands_for <> :lot "
        f"UNION SELECT e.seq FROM posting p JOIN entry e ON e.seq = p.seq {IN_FORCE} "
        "AND (p.source = :lot OR p.target = :lot) AND e.stands_for <> :lot) AS found"
    )
    return int(ask_one(connection, query, lot=seq))


def _lot(number: int, code: str, lot_type: str, measure: str) -> LotRow:
    return LotRow(number, Opened(code, LotType(lot_type), Measure(measure)))


def moment_cells(moment: Moment) -> dict[str, object]:
    """Return the parameters that bound a query at a moment."""
    return {"at": instant_text(moment.at), "number": moment.stands_for}
