"""The people who write in the book, for machines."""

from ledger.domain.entries import Person
from reports.json.kit.answer import Answer


class PersonRow(Answer, frozen=True):
    """A person who writes in the book."""

    initials: str
    """Initials, as they stand beside entries."""
    name: str
    """Full name."""
    role: str | None
    """What the person does."""


def person_row(person: Person) -> PersonRow:
    """Return a person."""
    return PersonRow(person.initials, person.name, person.role)
