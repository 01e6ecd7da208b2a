"""Looking things up: stock, one lot, the journal, names at the prompt.

Guarantees: reads only, each call one consistent view of the book. Refuses: unknown lots, with the
nearest codes.
"""

from datetime import date, datetime
from typing import TYPE_CHECKING

from msgspec import Struct

from ledger.domain.entries import Entry, Formula, House, Material, Start
from ledger.domain.lots.state import LotState, finished_at, latest
from ledger.service.account.codes import known_lot
from ledger.service.account.dates import with_dates
from ledger.service.desk.book import Book
from ledger.service.desk.clock import zone_of
from ledger.service.desk.control import formula_of
from ledger.service.desk.reader import resolve_lot
from ledger.service.desk.scene import lot_state
from ledger.service.lots.trace import Carried, Holder, Trace, trace_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries, walk
from ledger.store.read.briefs import Brief, all_lots, briefs, lots_on_hand

if TYPE_CHECKING:
    from ledger.service.evidence.seal import Seal


class Said(Struct, frozen=True):
    """An entry with what became of it."""

    entry: Entry
    """The entry."""
    corrected_by: int | None
    """Number of the entry that corrects or strikes it."""


class Dossier(Struct, frozen=True):
    """All the book knows of one lot."""

    house: House | None
    """The house."""
    state: LotState
    """The lot as it is now."""
    brief: Brief
    """The lot in brief."""
    said: tuple[Said, ...]
    """Every entry about it, in force or not, by when it happened."""
    trace: Trace
    """One step back and one forward."""
    materials: tuple[Material, ...]
    """Materials of all received lots it is made of, oils first."""
    seal: "Seal"
    """The seal of the book as it was read."""
    formula: Formula | None = None
    """The version of the formula that it, or what is in its bottles, was made by."""
    draws: tuple[Entry, ...] = ()
    """The entries by which other lots took of it until its making ended."""

    @property
    def inputs(self) -> tuple[Carried, ...]:
        """What went into it."""
        return tuple(edge for edge in self.trace.edges if edge.target == self.brief.code)

    @property
    def outputs(self) -> tuple[Carried, ...]:
        """What it went into."""
        return tuple(edge for edge in self.trace.edges if edge.source == self.brief.code)

    @property
    def holders(self) -> tuple[Holder, ...]:
        """Where it went outside the house."""
        return tuple(item for item in self.trace.holders if item.lot == self.brief.code)


def find_lot(book: Book, text: str, by: str | None = None) -> str:
    """Return the whole code of the lot that `text` names."""
    with book.reading() as connection:
        return resolve_lot(connection, text, by)


def now_at_home(book: Book) -> datetime:
    """Return the present moment on the house's clock."""
    return book.clock().astimezone(zone_of(house_of(book)))


def today(book: Book) -> date:
    """Return the day on the house's clock."""
    return now_at_home(book).date()


def stock(book: Book, *, everything: bool = False) -> tuple[Brief, ...]:
    """Return the lots that are on hand, or all, in the order they were opened, with their dates."""
    with book.reading() as connection:
        wanted = all_lots(connection) if everything else lots_on_hand(connection)
        return tuple(with_dates(connection, briefs(connection, wanted)).values())


def dossier(book: Book, text: str, by: str | None = None) -> Dossier:
    """Return all the book knows of the lot that `text` names."""
    with book.reading() as connection:
        return dossier_on(connection, resolve_lot(connection, text, by))


def dossier_on(connection: Connection, code: str) -> Dossier:
    """Return all the book knows of a lot, in an open transaction."""
    from ledger.service.evidence.seal import seal_on

    number = known_lot(connection, code).seq
    near = trace_on(connection, code, deepest=1)
    state = lot_state(connection, code)
    start = latest(state.bulk or state, Start)
    made_at = finished_at(state)
    return Dossier(
        house=queries.house(connection),
        state=state,
        brief=near.lot,
        said=tuple(Said(entry, by) for entry, by in queries.all_entries_of_lot(connection, number)),
        trace=near,
        materials=_materials(connection, number),
        seal=seal_on(connection),
        formula=formula_of(connection, start) if start else None,
        draws=queries.draws_on(connection, number, made_at) if made_at else (),
    )


def _materials(connection: Connection, number: int) -> tuple[Material, ...]:
    behind = briefs(connection, sorted(walk.back(connection, number)))
    codes = dict.fromkeys(brief.material for brief in behind.values() if brief.material)
    found = [queries.material(connection, code) for code in codes]
    return tuple(sorted((item for item in found if item), key=lambda item: item.sort != "oil"))


def brief_of(book: Book, code: str) -> Brief:
    """Return a lot in brief, by its whole code."""
    with book.reading() as connection:
        number = known_lot(connection, code).seq
        return briefs(connection, [number])[number]


def journal(
    book: Book, *, lot: str | None = None, last: int | None = None, by: str | None = None
) -> tuple[Said, ...]:
    """Return the entries of the book, or of one lot, in number order."""
    with book.reading() as connection:
        number = None
        if lot:
            number = known_lot(connection, resolve_lot(connection, lot, by)).seq
        found = queries.journal(connection, limit=10**9, lot=number)
    said = tuple(Said(entry, corrected_by) for entry, corrected_by in found)
    return said[-last:] if last else said


def history(book: Book, seq: int) -> tuple[Said, ...]:
    """Return an entry with all that it corrects and that corrects it, oldest first."""
    with book.reading() as connection:
        entry = queries.entry(connection, seq)
        if entry is None:
            return ()
        chain = queries.chain(connection, entry.stands_for)
    return tuple(Said(item, corrected_by) for item, corrected_by in chain)


def materials(book: Book) -> tuple[Material, ...]:
    """Return the materials in the book, by code."""
    with book.reading() as connection:
        found = [queries.material(connection, code) for code in queries.material_codes(connection)]
    return tuple(item for item in found if item)


def house_of(book: Book) -> House | None:
    """Return the house."""
    with book.reading() as connection:
        return queries.house(connection)


def entries_of_kind(book: Book, kind: str) -> tuple[Entry, ...]:
    """Return the entries in force of one kind, by number."""
    with book.reading() as connection:
        return queries.entries_of_kind(connection, kind)
