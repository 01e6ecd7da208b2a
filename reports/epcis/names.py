"""What lots, places and parties are called for everybody: an identifier is an address.

Guarantees: the same thing has the same name in every document; a lot of an article with a number
of GS1 has its Digital Link, every other the address of its page below the house's own.

References:
    GS1 CBV 2.0, 8 (identifiers: Digital Links, and private addresses on a domain of one's own).
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import partial
from urllib.parse import quote

from msgspec import Struct

from ledger.domain.entries import House
from ledger.domain.lots.lot import Lot
from ledger.domain.masters.gs1 import lot_link, party_link, place_link, read_gln, read_gtin
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together, visible
from reports.kit.pages import page_address


class Names(Struct, frozen=True):
    """How a house names things."""

    house: House
    """The house, which has an address on the web."""
    gtins: Mapping[str, str]
    """Numbers of articles by the codes of their lots."""
    gln: str | None = None
    """The house's own number, as a place and as a party."""

    def lot(self, lot: Lot) -> str:
        """Return the name of a lot."""
        gtin = self.gtins.get(lot.code)
        return lot_link(gtin, lot.code) if gtin else page_address(self.house, lot.code)

    def party(self, name: str) -> str:
        """Return the name of somebody whom the house deals with."""
        return f"{self.house.web}/party/{quote(name, safe='')}"

    @property
    def here(self) -> str:
        """The name of the place where the house works."""
        return place_link(self.gln) if self.gln else f"{self.house.web}/house"

    @property
    def maker(self) -> str:
        """The name of the house as a party."""
        return party_link(self.gln) if self.gln else self.party(self.house.name)

    @property
    def terms(self) -> str:
        """What the house's own terms begin with."""
        return f"{self.house.web}/terms/"


def names_of(
    house: House | None, lots: Iterable[Lot], articles: Sequence[str], gln: str | None
) -> Names:
    """Return how a house names things.

    Args:
        house: The house.
        lots: All lots that may be named.
        articles: What lots are, or a lot's code, each with the number of its article after `=`.
        gln: The house's own number.

    Raises:
        RefusedError: The house has no address on the web.
        InputError: A number is wrong, or what it is of is not in the book.
    """
    if house is None or not house.web:
        raise RefusedError(
            "The house has no address on the web, below which its lots could be named for others.",
            "Say which with: pottle house --web URL",
        )
    wrong = list[LedgerError]()
    known = tuple(lots)
    told = [attempt(wrong, partial(_article, text, known), None) for text in articles]
    number = attempt(wrong, lambda: read_gln(gln), None) if gln else None
    found = [each for each in told if each]
    wrong += _shared(found)
    if wrong:
        raise together(wrong)
    gtins = {lot.code: gtin for gtin, of_it in found for lot in of_it}
    return Names(house, gtins, number)


def _article(text: str, known: Sequence[Lot]) -> tuple[str, tuple[Lot, ...]]:
    what, parted, number = text.rpartition("=")
    if not parted or not what.strip():
        raise InputError(
            f"{visible(text)} does not say of what it is the number.",
            'Write what it is, =, and its number, as in "Orange syrup, 250 mL=9521234543213".',
        )
    meant = what.strip().casefold()
    found = tuple(lot for lot in known if meant in (lot.name.casefold(), lot.code.casefold()))
    if not found:
        raise InputError(
            f'There is no lot of "{visible(what.strip())}".',
            "Write what it is as this shows it: pottle stock --all",
        )
    return read_gtin(number), found


def _shared(found: Sequence[tuple[str, tuple[Lot, ...]]]) -> list[LedgerError]:
    """Return what is wrong where one number is of several articles: it is of one size of one."""
    named: dict[str, set[str]] = {}
    for gtin, lots in found:
        named.setdefault(gtin, set()).update(lot.name for lot in lots)
    return [
        InputError(
            f"{gtin} is given for {' and for '.join(sorted(of))}.",
            "Each article has a number of its own.",
        )
        for gtin, of in named.items()
        if len(of) > 1
    ]
