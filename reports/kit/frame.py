"""What frames every paper: house, seal, date, sheet; and what it is.

Guarantees: nothing in it depends on when a paper was printed, so that the same book gives the same
paper; times are on the house's clock; the sheet is the one that the house's country prints on.
"""

from datetime import datetime
from typing import Literal
from zoneinfo import ZoneInfo

from msgspec import Struct

from ledger.domain.entries import House
from ledger.domain.evidence.seals import Seal

PageSize = Literal["A4", "Letter"]
"""Sheets that papers are set for."""


class Frame(Struct, frozen=True):
    """The house, the seal and the date of a paper."""

    house_name: str
    """The maker's name."""
    seal: tuple[str, ...]
    """The three lines of the book's seal."""
    house_address: str | None = None
    """The maker's address in one line."""
    shown_at: datetime | None = None
    """When the newest entry it shows was written, on the house's clock."""
    zone: str = ""
    """The zone of every time on it."""
    size: PageSize = "A4"
    """The sheet it is printed on."""
    currency: str = ""
    """In which its money is."""

    @property
    def stood(self) -> str:
        """Say once as of when the book is shown, and on which clock its times are."""
        told = f"As the book stood {self.shown_at:%Y-%m-%d %H:%M}" if self.shown_at else ""
        times = f"all times {self.zone}" if self.zone else ""
        return ", ".join(part for part in (told, times) if part)


class Heading(Struct, frozen=True):
    """What a paper is: it stands at its head, above each page and in its title."""

    kind: str
    """What kind of paper."""
    code: str
    """The lot, or whatever else it is about."""
    product: str = ""
    """What that is."""
    status: str = ""
    """Where it stands."""
    across: str = ""
    """A word across every page, such as DRILL."""
    symbol: str = ""
    """What the QR symbol at the head says; none without."""

    @property
    def title(self) -> str:
        """The title of the file."""
        return f"{self.kind} {self.code}".strip()


ON_LETTER = frozenset({"US", "CA", "MX", "CL", "CO", "CR", "GT", "PA", "PH", "PR", "SV", "VE"})
"""Countries whose printers hold Letter sheets (from memory); all others hold A4."""


def frame_of(house: House | None, seal: Seal, written_at: datetime | None = None) -> Frame:
    """Return the frame of a paper.

    Args:
        house: The house, if the book has one.
        seal: The book's seal.
        written_at: When the newest entry shown was written.
    """
    zone = house.time_zone if house else "UTC"
    return Frame(
        house_name=house.name if house else "",
        house_address=house.address if house else None,
        seal=seal.lines,
        shown_at=written_at.astimezone(ZoneInfo(zone)) if written_at else None,
        zone=zone,
        size=size_in(house.country if house else None),
        currency=house.currency if house else "",
    )


def size_in(country: str | None) -> PageSize:
    """Return the sheet that printers of a country hold.

    >>> size_in("US"), size_in("IE"), size_in(None)
    ('Letter', 'A4', 'A4')
    """
    return "Letter" if (country or "").strip().upper() in ON_LETTER else "A4"
