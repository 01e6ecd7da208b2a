"""An upgrade, for machines."""

from ledger.service.copies.upgrade import Upgraded
from reports.json.copies.copied import CopiedAnswer, copied_answer
from reports.json.kit.answer import Answer


class UpgradeAnswer(Answer, frozen=True):
    """What an upgrade did."""

    before: int
    """The version the book had."""
    after: int
    """The version it has now."""
    kept: CopiedAnswer | None
    """The copy of the book as it was; null when there was nothing to do."""


def upgrade_answer(done: Upgraded) -> UpgradeAnswer:
    """Return what an upgrade did."""
    return UpgradeAnswer(done.before, done.after, copied_answer(done.kept) if done.kept else None)
