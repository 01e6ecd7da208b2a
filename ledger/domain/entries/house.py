"""Who keeps the book: the maker's house and its people; and whom it deals with.

Guarantees: the latest entry of a house, a person or a party counts. Who a person or a party is
stands beside the text of an entry that has a commitment to it, and can be forgotten; entries of
old forms have it in their text.
"""

from typing import ClassVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import Beside, Given
from ledger.domain.entries.spine import Facts


class Article(Struct, frozen=True):
    """What is sold under a number of GS1: one size of one product."""

    product: str
    """Name of the product, as its lots are called."""
    gtin: str
    """Number of the article (GTIN), 14 digits, the shorter ones with noughts in front."""
    size: Quantity | None = None
    """What one bottle of it holds; None: it is not told by the size of its bottles."""


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
    gln: str | None = None
    """Number of the house as a place and a party (GLN), 13 digits; GS1 gives it."""
    company_prefix: str | None = None
    """First digits of all numbers that GS1 lets the house give (GS1 Company Prefix)."""
    articles: tuple[Article, ...] = ()
    """What it sells under which number, in the order in which it was told."""


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
    gln: Beside | None = None
    """Its number as a party (GLN), 13 digits."""
