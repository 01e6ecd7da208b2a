"""What is done in a recall: calls to those who hold goods, and its end.

Guarantees: these move nothing; who was called is kept by the name that deliveries use.
"""

from typing import ClassVar

from ledger.domain.entries.choices import QuantityOrNothing, Reached
from ledger.domain.entries.spine import Facts


class Contact(Facts, frozen=True):
    """Somebody who holds goods of a lot was called."""

    KIND: ClassVar[str] = "contact"

    party: str
    """Who was called."""
    reached: Reached
    """How the call ended."""
    still_there: QuantityOrNothing | None = None
    """How much they say they still have."""
    words: str | None = None
    """What was said."""


class Closing(Facts, frozen=True):
    """The recall of a lot is closed."""

    KIND: ClassVar[str] = "closing"

    cause: str
    """What the cause was found to be."""
