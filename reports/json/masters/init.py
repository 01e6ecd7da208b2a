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


def init_answer(where: str) -> InitAnswer:
    """Return a book that was made; its first entry is the house."""
    return InitAnswer(1, "house", where)
