"""What keeps good order: counts, notes, cleaning and equipment.

Guarantees: of these a count alone changes what is there.
"""

from typing import ClassVar

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import QuantityOrNothing
from ledger.domain.entries.spine import Facts


class Count(Facts, frozen=True):
    """A lot on the shelf was counted, measured or weighed."""

    KIND: ClassVar[str] = "count"

    amount: QuantityOrNothing
    """What was there."""


class Note(Facts, frozen=True):
    """Free words."""

    KIND: ClassVar[str] = "note"

    text: str
    """The words."""


class Clean(Facts, frozen=True):
    """A vessel was cleaned."""

    KIND: ClassVar[str] = "clean"

    vessel: str
    """Which one."""
    how: str
    """How."""
    last_held: str | None = None
    """What it held before."""


class Equipment(Facts, frozen=True):
    """An instrument or vessel was taken into use, checked or set."""

    KIND: ClassVar[str] = "equipment"

    name: str
    """Which one."""
    words: str
    """What was done or found."""
    holds: Quantity | None = None
    """How much a vessel holds."""
