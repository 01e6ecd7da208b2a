"""What a complaint points to: the last look, other complaints, inputs shared with them.

Guarantees: reads only; a look counts for the bottle complained of when it was taken of the packed
lot, and for no more than its bulk when not. Refuses: to weigh evidence; shared inputs are where to
look.
"""

from collections import Counter
from datetime import date
from enum import StrEnum

from msgspec import Struct

from ledger.domain.entries import Complaint, Entry, Look, Move, entries_of
from ledger.domain.entries.choices import Grade, MaterialKind, MoveAs
from ledger.domain.lots.lot import BARRED, Lot
from ledger.domain.masters.gaps import PACKING
from ledger.service.account.codes import known_lot
from ledger.service.account.lots import lots_by_number
from ledger.service.desk.book import Book
from ledger.service.lots.trace import Way, trace_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

FIRST = (MaterialKind.OIL, None, MaterialKind.ETHANOL, MaterialKind.CLARIFIER)
"""Kinds of shared inputs told first among equals; None: made here."""


class Question(StrEnum):
    """The questions of a complaint that are asked after its lot."""

    OPENED = "when it was opened"
    STORED = "where it was stored"
    MIXED = "how it was mixed"
    PHOTO = "a photo"


UNCLEAR = (Grade.HAZY, Grade.OPALESCENT, Grade.CLOUDY, Grade.MILKY)
"""Grades whose name in a complaint makes it one about clarity."""


class SharedInput(Struct, frozen=True):
    """An input of the lot that other lots complained of are made of too."""

    brief: Lot
    """What it is."""
    complaints: int
    """Complaints of other lots made of it."""
    lots: int
    """How many such lots."""


class Triage(Struct, frozen=True):
    """What a complaint points to."""

    complaint: Entry[Complaint]
    """The complaint."""
    lot: Lot
    """The lot complained of."""
    still_open: tuple[Question, ...]
    """Questions not answered yet."""
    look: Entry[Look] | None
    """The last look at the lot, else at its bulk."""
    is_of_the_lot: bool
    """Whether that look was taken of the lot itself."""
    is_fresh: bool
    """Whether it was taken on the day of the complaint or later."""
    kept_back: bool
    """Whether a bottle was kept back."""
    others: tuple[Entry[Complaint], ...]
    """Other complaints of the lot."""
    shared: tuple[SharedInput, ...]
    """Inputs shared with other lots complained of, most complaints first."""

    @property
    def grade(self) -> Grade | None:
        """The grade of the last look."""
        return self.look.facts.grade if self.look else None

    @property
    def is_about_clarity(self) -> bool:
        """Whether the complaint names a grade that is not clear."""
        symptom = self.complaint.facts.symptom.lower()
        return any(grade in symptom for grade in UNCLEAR)

    @property
    def is_unclear_here(self) -> bool:
        """Whether the last look found the lot itself, or its bulk, unclear."""
        return self.grade in UNCLEAR

    @property
    def is_barred(self) -> bool:
        """Whether the lot is held, rejected or recalled."""
        return self.lot.status in BARRED


def triage(book: Book, complaint: Entry[Complaint]) -> Triage:
    """Return what a recorded complaint points to."""
    code = complaint.draft.lot
    assert code is not None
    with book.reading() as connection:
        lot = lots_by_number(connection, [number := known_lot(connection, code).seq])[number]
        entries = queries.entries_of_lot(connection, number)
        own = _last_look(entries)
        look = own or (
            _last_look(queries.entries_of_lot(connection, lot.bulk)) if lot.bulk else None
        )
        complaints = queries.entries_of_kind(connection, Complaint)
        return Triage(
            complaint=complaint,
            lot=lot,
            still_open=_still_open(complaint),
            look=look,
            is_of_the_lot=own is not None or lot.bulk is None,
            is_fresh=look is not None and _day(look) >= _day(complaint),
            kept_back=any(
                move.facts.moved_as is MoveAs.RETAINED for move in entries_of(entries, Move)
            ),
            others=tuple(
                e
                for e in complaints
                if e.draft.lot == code and e.stands_for != complaint.stands_for
            ),
            shared=_shared(connection, code, [e for e in complaints if e.draft.lot != code]),
        )


def _last_look(entries: tuple[Entry, ...]) -> Entry[Look] | None:
    looks = list(entries_of(entries, Look))
    return looks[-1] if looks else None


def _day(entry: Entry) -> date:
    return entry.draft.happened.local().date()


def _still_open(complaint: Entry[Complaint]) -> tuple[Question, ...]:
    facts = complaint.facts
    told = {
        Question.OPENED: facts.opened,
        Question.STORED: facts.stored,
        Question.MIXED: facts.mixed,
        Question.PHOTO: facts.photo,
    }
    return tuple(question for question, said in told.items() if not said)


def _shared(connection: Connection, code: str, others: list[Entry]) -> tuple[SharedInput, ...]:
    own = _made_of(connection, code)
    told = Counter(entry.draft.lot for entry in others if entry.draft.lot)
    complaints: Counter[str] = Counter()
    lots: Counter[str] = Counter()
    for other, number in told.items():
        for source in _made_of(connection, other).keys() & own.keys():
            complaints[source] += number
            lots[source] += 1
    shared = [SharedInput(own[source], complaints[source], lots[source]) for source in complaints]
    kept = [source for source in shared if source.brief.sort not in PACKING]
    return tuple(
        sorted(kept, key=lambda source: (-source.complaints, _rank(source), source.brief.code))
    )


def _made_of(connection: Connection, code: str) -> dict[str, Lot]:
    nodes = trace_on(connection, code, forward=False).nodes
    return {node.brief.code: node.brief for node in nodes if node.way is Way.BACK}


def _rank(source: SharedInput) -> int:
    return FIRST.index(source.brief.sort) if source.brief.sort in FIRST else len(FIRST)
