"""An upgrade, for machines."""

from ledger.service.copies.upgrade import Upgraded
from reports.json.copies.copied import CopiedAnswer, copied_answer
from reports.json.kit.answer import Answer


class RestatedLot(Answer, frozen=True):
    """A lot that stands elsewhere by the rules of this version."""

    code: str
    """Its code."""
    was: str
    """Where it stood."""
    status: str
    """Where it stands now."""


class UpgradeAnswer(Answer, frozen=True):
    """What an upgrade did."""

    before: int
    """The version the book had."""
    after: int
    """The version it has now."""
    kept: CopiedAnswer | None
    """The copy of the book as it was; null when there was nothing to do."""
    restated: list[RestatedLot]
    """The lots that stand elsewhere by the rules of this version."""


def upgrade_answer(done: Upgraded) -> UpgradeAnswer:
    """Return what an upgrade did."""
    kept = copied_answer(done.kept) if done.kept else None
    restated = [RestatedLot(lot.code, lot.before, lot.after) for lot in done.restated]
    return UpgradeAnswer(done.before, done.after, kept, restated)
