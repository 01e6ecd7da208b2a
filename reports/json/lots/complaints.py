"""Complaints and what became of them, for machines."""

from datetime import date

from ledger.domain.entries.choices import Outcome
from ledger.service.lots.complaints import Complained
from reports.json.kit.answer import Answer, Code, Moment, moment


class ComplaintRow(Answer, frozen=True):
    """A complaint and what became of it."""

    entry: int
    """Number of its first entry, by which it is answered."""
    happened: Moment
    """When it was made."""
    code: Code
    """Code of the lot complained of."""
    name: str
    """What the lot is."""
    party: str | None
    """Who complains."""
    symptom: str
    """What is wrong."""
    opened: str | None
    """When the bottle was opened."""
    answer_by: date | None
    """Day by which it is to be answered; null: of before there was such a day, and not due."""
    open: bool
    """Whether something is to be done about it still."""
    outcome: Outcome | None
    """What became of it; null while nobody said."""
    told_by: str | None
    """Initials of who told the customer."""
    told_on: date | None
    """Day on which the customer was told."""
    words: str | None
    """What was found, or said to the customer."""


def complaint_row(item: Complained) -> ComplaintRow:
    """Return a complaint."""
    facts, said = item.entry.facts, item.answer.facts if item.answer else None
    return ComplaintRow(
        entry=item.number,
        happened=moment(item.entry.draft.happened),
        code=item.lot.code,
        name=item.lot.name,
        party=facts.party,
        symptom=facts.symptom,
        opened=facts.opened,
        answer_by=item.answer_by,
        open=item.is_open,
        outcome=said.outcome if said else None,
        told_by=said.told_by if said else None,
        told_on=said.told_on if said else None,
        words=said.words if said else None,
    )
