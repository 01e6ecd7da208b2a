"""What lots, places, parties and cases are called for everybody: an identifier is an address.

Guarantees: the same thing has the same name in every document; a lot of an article with a number
of GS1 has its Digital Link, and so has a case that was numbered under a prefix of GS1; every other
has an address below the house's own. Refuses: numbers of the house's articles for what others made.

References:
    GS1 CBV 2.0, 8 (identifiers: Digital Links, and private addresses on a domain of one's own).
"""

from collections.abc import Iterable, Mapping
from urllib.parse import quote

from msgspec import Struct

from ledger.domain.entries import House
from ledger.domain.lots.lot import Lot
from ledger.domain.masters.articles import article_of
from ledger.domain.masters.gs1 import (
    case_link,
    case_number,
    lot_link,
    party_link,
    place_link,
)
from ledger.errors import RefusedError
from reports.kit.pages import case_address, page_address


class Names(Struct, frozen=True):
    """How a house names things."""

    house: House
    """The house, which has an address on the web."""
    gtins: Mapping[str, str]
    """Numbers of articles by the codes of their lots."""
    numbers: Mapping[str, str]
    """Numbers of those whom the house deals with (GLN), by name."""

    def lot(self, lot: Lot) -> str:
        """Return the name of a lot."""
        gtin = self.gtins.get(lot.code)
        return lot_link(gtin, lot.code) if gtin else page_address(self.house, lot.code)

    def case(self, number: int, prefix: str | None) -> str:
        """Return the name of a case, by its number and the prefix it was numbered under."""
        if prefix:
            return case_link(case_number(prefix, number))
        return case_address(self.house, number)

    def party(self, name: str) -> str:
        """Return the name of somebody whom the house deals with."""
        gln = self.numbers.get(name)
        return party_link(gln) if gln else f"{self.house.web}/party/{quote(name, safe='')}"

    @property
    def here(self) -> str:
        """The name of the place where the house works."""
        return place_link(self.house.gln) if self.house.gln else f"{self.house.web}/house"

    @property
    def maker(self) -> str:
        """The name of the house as a party."""
        return party_link(self.house.gln) if self.house.gln else self.party(self.house.name)

    @property
    def terms(self) -> str:
        """What the house's own terms begin with."""
        return f"{self.house.web}/terms/"


def names_of(house: House | None, lots: Iterable[Lot], numbers: Mapping[str, str]) -> Names:
    """Return how a house names things.

    Args:
        house: The house.
        lots: All lots that may be named.
        numbers: Numbers of those whom it deals with (GLN), by name.

    Raises:
        RefusedError: The house has no address on the web.
    """
    if house is None or not house.web:
        raise RefusedError(
            "The house has no address on the web, below which its lots could be named for others.",
            "Say which with: pottle house --web URL",
        )
    # What was bought has no product, whatever it is called.
    made = ((lot.code, article_of(house, lot.name)) for lot in lots if lot.product)
    return Names(house, {code: article.gtin for code, article in made if article}, numbers)
