"""A new book, for machines."""

from reports.json.kit.answer import Answer


class InitAnswer(Answer, frozen=True):
    """A book that was made."""

    entry: int
    """Number of its first entry."""
    kind: str
    """Kind of that entry."""
    ledger: str
    """Path or URL of the book."""
    time_zone: str
    """The zone of the house's clock, the machine's where none was told."""


def init_answer(where: str, time_zone: str) -> InitAnswer:
    """Return a book that was made; its first entry is the house."""
    return InitAnswer(1, "house", where, time_zone)
