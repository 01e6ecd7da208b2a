"""Entries of the journal, for machines."""

from ledger.domain.entries.choices import Precision
from ledger.service.lots.journal import Said
from reports.json.kit.answer import Answer, Code, Moment, moment, moment_of
from reports.words.entries.sentence import sentence, title


class JournalRow(Answer, frozen=True):
    """An entry, with what became of it."""

    entry: int
    """Its number."""
    kind: str
    """Its kind."""
    code: Code | None
    """Code of the lot it is about, if it is about one."""
    happened: Moment
    """When it happened, by the clock it was written by."""
    precision: Precision
    """How exactly that is known."""
    recorded_at: Moment
    """When the book took it."""
    by: str | None
    """Initials of who did it."""
    title: str
    """What it is called in a list."""
    says: str
    """What it says, in words."""
    reason: str | None
    """Why, where a reason was asked for."""
    corrects: int | None
    """Number of the entry that it corrects or strikes."""
    corrected_by: int | None
    """Number of the entry that corrects or strikes it."""
    late: bool
    """Whether it was written more than a day after it happened."""


def journal_row(said: Said) -> JournalRow:
    """Return an entry of the journal."""
    entry, draft = said.entry, said.entry.draft
    return JournalRow(
        entry=entry.seq,
        kind=entry.kind,
        code=draft.lot,
        happened=moment(draft.happened),
        precision=draft.happened.precision,
        recorded_at=moment_of(entry.recorded_at),
        by=draft.by,
        title=title(entry),
        says=sentence(entry),
        reason=draft.reason,
        corrects=draft.corrects,
        corrected_by=said.corrected_by,
        late=entry.is_late,
    )
