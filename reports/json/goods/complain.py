"""A complaint and what it points to, for machines."""

from typing import TYPE_CHECKING

from msgspec.structs import asdict

from ledger.domain.entries import Entry, Look
from ledger.domain.entries.choices import Grade
from ledger.service.desk.book import Recorded
from ledger.service.goods.triage import SharedInput, Triage
from reports.json.desk.recorded import RecordedAnswer, recorded_answer
from reports.json.kit.answer import Answer, Moment, moment
from reports.json.kit.lot import LotBrief, lot_brief
from reports.words.entries.sentence import sentence

if TYPE_CHECKING:
    from ledger.service.lots.dossier import Dossier


class LastLook(Answer, frozen=True):
    """The last look at what is complained of."""

    entry: int
    """Number of the entry."""
    happened: Moment
    """When it was taken."""
    grade: Grade
    """How clear it was."""
    of_the_lot: bool
    """Whether it was taken of the lot itself, not of what it was filled from."""
    since_complaint: bool
    """Whether it was taken on the day of the complaint or later."""


class OtherComplaint(Answer, frozen=True):
    """Another complaint of the same lot."""

    entry: int
    """Number of the entry."""
    happened: Moment
    """When it was made."""
    says: str
    """What it says, in words."""


class SharedLot(LotBrief, frozen=True):
    """An input of the lot that other lots complained of are made of too."""

    complaint_count: int
    """Complaints of other lots made of it."""
    lot_count: int
    """How many such lots."""


class TriageTold(Answer, frozen=True):
    """What a complaint points to."""

    still_open: tuple[str, ...]
    """Questions not answered yet: opened, stored, mixed, photo."""
    look: LastLook | None
    """The last look at the lot, else at what it was filled from."""
    kept_back: bool
    """Whether a bottle was kept back."""
    others: tuple[OtherComplaint, ...]
    """Other complaints of the lot."""
    shared: tuple[SharedLot, ...]
    """Inputs shared with other lots complained of, most complaints first."""


class ComplainAnswer(RecordedAnswer, frozen=True):
    """A complaint that was recorded, and what it points to."""

    triage: TriageTold
    """What it points to."""


def complain_answer(
    recorded: Recorded, dossier: "Dossier | None", step: str | None, found: Triage
) -> ComplainAnswer:
    """Return a complaint that was recorded, and what it points to."""
    plain = recorded_answer(recorded, dossier, step)
    return ComplainAnswer(**asdict(plain), triage=_triage(found))


def _triage(found: Triage) -> TriageTold:
    return TriageTold(
        still_open=tuple(question.name.lower() for question in found.still_open),
        look=_look(found.look, found) if found.look else None,
        kept_back=found.kept_back,
        others=tuple(
            OtherComplaint(entry.seq, moment(entry.draft.happened), sentence(entry))
            for entry in found.others
        ),
        shared=tuple(map(_shared, found.shared)),
    )


def _look(look: Entry[Look], found: Triage) -> LastLook:
    return LastLook(
        entry=look.seq,
        happened=moment(look.draft.happened),
        grade=look.facts.grade,
        of_the_lot=found.is_of_the_lot,
        since_complaint=found.is_fresh,
    )


def _shared(item: SharedInput) -> SharedLot:
    brief = asdict(lot_brief(item.brief))
    return SharedLot(**brief, complaint_count=item.complaints, lot_count=item.lots)
