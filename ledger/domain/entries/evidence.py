"""What is taken back: entries made by mistake.

Guarantees: which entry is taken back stands in the draft (`corrects`), so these say nothing more.
"""

from typing import ClassVar

from ledger.domain.entries.spine import Facts


class Strike(Facts, frozen=True):
    """An entry made by mistake is struck out; it stays readable."""

    KIND: ClassVar[str] = "strike"
