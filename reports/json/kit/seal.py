"""The seal of a book, the same wherever it stands."""

from ledger.domain.evidence.seals import Seal
from reports.json.kit.answer import Answer


class SealTold(Answer, frozen=True):
    """What a book looked like at one moment."""

    house: str
    """The maker's name."""
    entries: int
    """How many entries it had."""
    root: str
    """Root of its tree, 64 hexadecimal digits."""
    lines: tuple[str, ...]
    """The three lines as they are printed."""


def seal_told(seal: Seal) -> SealTold:
    """Return a seal."""
    return SealTold(seal.house, seal.entries, seal.root, seal.lines)
