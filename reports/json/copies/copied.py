"""A copy of a book, for machines: what backup, restore, export and import answer."""

from ledger.service.copies.copied import Copied
from reports.json.kit.answer import Answer


class CopiedAnswer(Answer, frozen=True):
    """A copy that was made and verified."""

    path: str
    """Where it is; the address of a server goes without its password."""
    house: str
    """The maker's name."""
    entries: int
    """How many entries it has."""
    root: str
    """Root of its tree, 64 hexadecimal digits."""


def copied_answer(made: Copied) -> CopiedAnswer:
    """Return a copy that was made."""
    return CopiedAnswer(made.where, made.seal.house, made.seal.entries, made.seal.root)
