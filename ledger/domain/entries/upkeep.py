"""What keeps the book in order: checks, counts, notes, deviations, cleaning, strikes.

Guarantees: a strike replaces nothing, it only takes an entry out of force. Refuses: nothing by
itself; rules do.
"""

from typing import ClassVar

from ledger.domain.entries.choices import QuantityOrNothing, SeqRef
from ledger.domain.entries.spine import Facts


class Check(Facts, frozen=True):
    """A second person has checked an entry or a lot."""

    KIND: ClassVar[str] = "check"

    about: SeqRef | None = None
    """Number of the entry checked; None: the lot as a whole."""
    words: str | None = None
    """What was checked."""


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


class Deviation(Facts, frozen=True):
    """Something that should not have happened, recorded with its reason."""

    KIND: ClassVar[str] = "deviation"

    rule: str
    """Name of the rule it departs from."""
    text: str
    """What was found, as a whole sentence."""
    about: SeqRef | None = None
    """Number of the entry it belongs to."""


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


class Strike(Facts, frozen=True):
    """An entry made by mistake is struck out; it stays readable."""

    KIND: ClassVar[str] = "strike"
