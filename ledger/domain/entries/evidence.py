"""What is taken back: entries made by mistake."""

from typing import ClassVar

from ledger.domain.entries.spine import Facts


class Strike(Facts, frozen=True):
    """An entry made by mistake is struck out; it stays readable."""

    KIND: ClassVar[str] = "strike"
