"""The house, for machines."""

from ledger.domain.amounts.money import coins
from ledger.domain.entries import House
from ledger.domain.entries.house import Article
from reports.json.kit.answer import Amount, Answer, Figure, amount_of


class ArticleAnswer(Answer, frozen=True):
    """What is sold under a number of GS1."""

    product: str
    """Name of the product."""
    size: Amount | None
    """What one bottle of it holds."""
    gtin: str
    """Number of the article (GTIN), 14 digits."""


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
    gln: str | None
    """Its number as a place and a party (GLN)."""
    company_prefix: str | None
    """First digits of all its numbers of GS1 (GS1 Company Prefix)."""
    articles: list[ArticleAnswer]
    """What it sells under which number."""


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
        gln=house.gln,
        company_prefix=house.company_prefix,
        articles=[_article(article) for article in house.articles],
    )


def _article(article: Article) -> ArticleAnswer:
    size = amount_of(article.size.amount, article.size.measure) if article.size else None
    return ArticleAnswer(article.product, size, article.gtin)
