"""Who keeps the book: the maker's house and its people; and whom it deals with.

Guarantees: the latest entry of a house, a person or a party counts. Who a person or a party is
stands beside the text of an entry that has a commitment to it, and can be forgotten; entries of
old forms have it in their text.
"""

from typing import ClassVar

from ledger.domain.entries.choices import Beside, Given
from ledger.domain.entries.spine import Facts


class House(Facts, frozen=True):
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
    hour_minor: int | None = None
    """What an hour of labour costs, in hundredths of the currency if not said."""
    phone: str | None = None
    """Telephone number of the house."""
    hour_digits: int | None = None
    """Digits after the point that an hour is kept with; None: two, hundredths."""
    doubts: str | None = None
    """What its instruments may be off by, as `ledger.domain.masters.doubts` writes it."""
    keep_months: int | None = None
    """How many months beyond its last date a record is kept, by the house's own rule."""
    web: str | None = None
    """Where the house puts the pages of its lots: an address on the web, no slash at its end."""


class Person(Facts, frozen=True):
    """A person who writes in the book."""

    KIND: ClassVar[str] = "person"

    initials: str
    """Two to four letters, unique in the house."""
    name: Beside = ""
    """Full name."""
    role: Beside | None = None
    """What the person does."""
    commitment: Given | None = None
    """Commitment to name and role, 64 hexadecimal digits; None: they stand in the text."""


class Party(Facts, frozen=True):
    """Somebody outside the house: a supplier or a customer, and how to reach them."""

    KIND: ClassVar[str] = "party"

    name: Beside = ""
    """Name as it stands in receipts and deliveries; the latest entry of a name counts."""
    phone: Beside | None = None
    """Telephone number."""
    email: Beside | None = None
    """Electronic mail address."""
    address: Beside | None = None
    """Postal address in one line."""
    words: Beside | None = None
    """Whom to ask for, when they are there."""
    code: Given | None = None
    """Short code that stands for the name, P3; None in entries of old forms."""
    commitment: Given | None = None
    """Commitment to the rest, 64 hexadecimal digits; None: it stands in the text."""
