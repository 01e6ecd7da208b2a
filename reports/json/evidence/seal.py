"""The seal of a book as it is now, for machines."""

from msgspec.structs import asdict

from ledger.domain.evidence.seals import Seal
from reports.json.kit.seal import SealTold, seal_told


class SealAnswer(SealTold, frozen=True):
    """The seal of the book as it is now."""

    path: str | None
    """Where it was written; null when it was not."""


def seal_answer(seal: Seal, path: str | None) -> SealAnswer:
    """Return the seal of the book as it is now."""
    return SealAnswer(**asdict(seal_told(seal)), path=path)
