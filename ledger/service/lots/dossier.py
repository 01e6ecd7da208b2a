"""The dossier: all the book knows of one lot.

Guarantees: reads only, each call one consistent view of the book. Refuses: unknown lots, with the
nearest codes.
"""

from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct

from ledger.domain.entries import Entry, Formula, House, Material, Start
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import LotState, finished_at, in_brief, latest
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.account.lots import lots_by_number
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.control import formula_of
from ledger.service.lots.changed import changed_since_release
from ledger.service.lots.journal import Said, said_of
from ledger.service.lots.trace import Carried, Holder, Trace, trace_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries, walk
from ledger.store.read.dependents import Changed
from ledger.store.read.end import last_recorded
from ledger.store.read.received import materials, materials_of

if TYPE_CHECKING:
    from ledger.service.evidence.seal import Seal


class Dossier(Struct, frozen=True):
    """All the book knows of one lot."""

    house: House | None
    """The house."""
    state: LotState
    """The lot as it is now."""
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
    written_at: datetime | None = None
    """When the newest entry of the book was written."""
    changed: tuple[Changed, ...] = ()
    """What its release stands on and was corrected or struck since."""

    @property
    def lot(self) -> Lot:
        """The lot in brief, as it is now."""
        return in_brief(self.state)

    @property
    def inputs(self) -> tuple[Carried, ...]:
        """What went into it."""
        return tuple(edge for edge in self.trace.edges if edge.target == self.state.code)

    @property
    def outputs(self) -> tuple[Carried, ...]:
        """What it went into."""
        return tuple(edge for edge in self.trace.edges if edge.source == self.state.code)

    @property
    def holders(self) -> tuple[Holder, ...]:
        """Where it went outside the house."""
        return tuple(holder for holder in self.trace.holders if holder.lot == self.state.code)


def find_lot(book: Book, text: str, by: str | None = None) -> str:
    """Return the whole code of the lot that `text` names."""
    with book.reading() as connection:
        return resolve_lot(connection, text, by)


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
        said=said_of(connection, queries.all_entries_of_lot(connection, number)),
        trace=near,
        materials=_materials(connection, number),
        seal=seal_on(connection),
        formula=formula_of(connection, start) if start else None,
        draws=queries.draws_on(connection, number, made_at) if made_at else (),
        written_at=last_recorded(connection),
        changed=changed_since_release(connection, state),
    )


def _materials(connection: Connection, number: int) -> tuple[Material, ...]:
    known = materials(connection, materials_of(connection, walk.back(connection, number)))
    return tuple(sorted(known.values(), key=lambda material: material.sort != "oil"))


def brief_of(book: Book, code: str) -> Lot:
    """Return a lot in brief, by its whole code."""
    with book.reading() as connection:
        number = known_lot(connection, code).seq
        return lots_by_number(connection, [number])[number]
