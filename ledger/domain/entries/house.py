"""Who keeps the book: the maker's house and its people.

Guarantees: the latest entry of a house or a person counts. Refuses: nothing by itself; rules do.
"""

from dataclasses import dataclass
from typing import ClassVar

from ledger.domain.entries.spine import Facts


@dataclass(frozen=True, slots=True)
class House(Facts):
    """The maker's house; the first entry of every book."""

    KIND: ClassVar[str] = "house"

    name: str
    """The maker's trading name."""
    currency: str
    """ISO 4217 code of the money that costs are written in."""
    address: str | None = None
    """Postal address in one line."""
    country: str | None = None
    """ISO 3166 two-letter code."""
    time_zone: str = "UTC"
    """IANA name of the zone in which times without an offset are read."""
    fluid_ounce: str = "US"
    """Which fluid ounce a bare `fl oz` means: US or imperial."""


@dataclass(frozen=True, slots=True)
class Person(Facts):
    """A person who writes in the book."""

    KIND: ClassVar[str] = "person"

    initials: str
    """Two to four letters, unique in the house."""
    name: str
    """Full name."""
    role: str | None = None
    """What the person does."""
