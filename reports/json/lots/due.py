"""What is due, for machines."""

from ledger.service.lots.due import Due, DueList, Waits
from reports.json.kit.answer import Answer, Code, Moment, moment_of
from reports.words.lots.due import minutes_between, todo
from reports.words.lots.next_in_lists import step_of_due


class DueRow(Answer, frozen=True):
    """Something that is due, or will be."""

    waits: Waits
    """What the lot waits for."""
    code: Code
    """Code of the lot."""
    name: str
    """What it is."""
    says: str
    """What to do, in words."""
    due: Moment | None
    """When; null where nothing tells."""
    minutes: int | None
    """How long it is until then; below nothing: overdue."""
    next: str
    """The command for it."""


def due_rows(found: DueList) -> list[DueRow]:
    """Return what is due, by time."""
    return [_row(item, found) for item in found.items]


def _row(item: Due, found: DueList) -> DueRow:
    return DueRow(
        waits=item.waits,
        code=item.lot,
        name=item.name,
        says=todo(item, found.now),
        due=moment_of(item.at) if item.at else None,
        minutes=minutes_between(found.now, item.at) if item.at else None,
        next=step_of_due(item, found.now),
    )
