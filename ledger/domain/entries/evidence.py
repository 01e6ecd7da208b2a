"""What is taken back: entries made by mistake, and details of people that are forgotten.

Guarantees: which entry is struck stands in the draft (`corrects`), so that says nothing more; what
is forgotten is named by code and by number, never by name.
"""

from typing import ClassVar

from msgspec import Struct

from ledger.domain.entries.choices import PersonRef, SeqRef
from ledger.domain.entries.spine import Facts


class Strike(Facts, frozen=True):
    """An entry made by mistake is struck out; it stays readable."""

    KIND: ClassVar[str] = "strike"


class Named(Struct, frozen=True):
    """An entry that names whoever is forgotten."""

    entry: SeqRef
    """Its number."""
    is_kept: bool
    """Whether its text keeps the name; otherwise its details are erased."""


class Forget(Facts, frozen=True):
    """Somebody is forgotten: details are erased for good, and the name is shown no more."""

    KIND: ClassVar[str] = "forget"

    party: str | None = None
    """Code of the party."""
    person: PersonRef | None = None
    """Initials of the person; an entry has either these or a party."""
    entries: tuple[Named, ...] = ()
    """The entries that tell who it was."""
