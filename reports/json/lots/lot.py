"""One lot, for machines: all that the book knows of it."""

from msgspec.structs import asdict

from ledger.service.glass.card import ServingCard
from ledger.service.lots.dossier import Dossier
from reports.json.glass.serving import ServingAnswer, serving_answer
from reports.json.kit.answer import Answer
from reports.json.kit.lot import LotBrief, lot_brief
from reports.json.kit.seal import SealTold, seal_told
from reports.json.lots.journal import JournalRow, journal_row
from reports.json.lots.trace import EdgeTold, HolderTold, edges_told, holders_told


class ChangedTold(Answer, frozen=True):
    """An entry on which a release stands that was corrected or struck since."""

    entry: int
    """Its number."""
    lot: str
    """Code of the lot that it is about."""
    by: int
    """Number of the entry that corrects or strikes it."""
    is_struck: bool
    """Whether it was struck."""


class LotAnswer(LotBrief, frozen=True):
    """One lot with its inputs, outputs, holders and entries."""

    edges: tuple[EdgeTold, ...]
    """What went into it and what it went into."""
    holders: tuple[HolderTold, ...]
    """Where it, and what was made of it in one step, went outside the house."""
    journal: tuple[JournalRow, ...]
    """Every entry about it, in force or not, by when it happened."""
    changed_since_release: tuple[ChangedTold, ...]
    """What its release stands on and was corrected or struck since."""
    seal: SealTold
    """The seal of the book as it was read."""
    contains: ServingAnswer | None
    """What it contains and a glass of it delivers; null where nothing tells."""
    next: str | None
    """The command that usually comes next."""


def lot_answer(dossier: Dossier, served: ServingCard | None, step: str | None) -> LotAnswer:
    """Return one lot."""
    return LotAnswer(
        **asdict(lot_brief(dossier.lot)),
        edges=edges_told(dossier.trace.edges),
        holders=holders_told(dossier.trace.holders),
        journal=tuple(map(journal_row, dossier.said)),
        changed_since_release=tuple(
            ChangedTold(item.entry, item.lot, item.by, item.is_struck) for item in dossier.changed
        ),
        seal=seal_told(dossier.seal),
        contains=serving_answer(served) if served else None,
        next=step,
    )
