"""The house, for machines."""

from ledger.domain.amounts.money import coins
from ledger.domain.entries import House
from reports.json.kit.answer import Answer, Figure


class HouseAnswer(Answer, frozen=True):
    """The maker's house."""

    name: str
    """The maker's trading name."""
    currency: str
    """ISO 4217 code of the money that costs are written in."""
    address: str | None
    """Postal address in one line."""
    country: str | None
    """ISO 3166 two-letter code."""
    time_zone: str
    """IANA name of the zone in which times without an offset are read."""
    fluid_ounce: str
    """Which fluid ounce a bare `fl oz` means: US or imperial."""
    hour: Figure | None
    """What an hour of work costs, in the currency."""
    phone: str | None
    """Telephone number."""
    doubts: str | None
    """What its instruments may be off by; null: what is usual."""
    keep_months: int | None
    """How many months beyond its last date a record is kept, by the house's own rule."""
    web: str | None
    """Where the pages of its lots are."""


def house_answer(house: House) -> HouseAnswer:
    """Return the house."""
    return HouseAnswer(
        name=house.name,
        currency=house.currency,
        address=house.address,
        country=house.country,
        time_zone=house.time_zone,
        fluid_ounce=house.fluid_ounce,
        hour=None if house.hour_minor is None else coins(house.hour_minor, house.hour_digits),
        phone=house.phone,
        doubts=house.doubts,
        keep_months=house.keep_months,
        web=house.web,
    )
