"""A rehearsal of losing the book, for machines."""

from ledger.service.copies.rehearsal import Rehearsed
from reports.json.kit.answer import Answer, Moment, moment_of


class RehearsalAnswer(Answer, frozen=True):
    """What would be lost today."""

    path: str
    """The newest copy, which was put back aside and verified."""
    copies: int
    """How many copies there are."""
    kept_entries: int
    """How many entries the copy has."""
    entries: int
    """How many the book has."""
    lost_entries: int
    """How many would be lost today."""
    kept_until: Moment | None
    """When the last entry of the copy was recorded."""


def rehearsal_answer(found: Rehearsed) -> RehearsalAnswer:
    """Return what a rehearsal found."""
    return RehearsalAnswer(
        path=str(found.copy),
        copies=found.copies,
        kept_entries=found.kept.entries,
        entries=found.now.entries,
        lost_entries=found.lost,
        kept_until=moment_of(found.kept_until) if found.kept_until else None,
    )
