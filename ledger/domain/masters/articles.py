"""What a house sells under which number of GS1: one size of one product is one article.

Guarantees: an article is found by what its lots are called, however its size is written; a number
is of one article, and an article has one number. Refuses: to take the number of one size for
another.

References:
    GS1 General Specifications, 4.2 (a number for each product and each size of it; from memory).
"""

from collections.abc import Iterable, Sequence

from ledger.domain.amounts.quantity import Measure, Quantity, parse_quantity, tidy
from ledger.domain.entries import House
from ledger.domain.entries.house import Article
from ledger.domain.entries.texts import read_text
from ledger.domain.masters.gs1 import read_gtin
from ledger.errors import InputError, LedgerError, visible

MOST_WORDS = 3
"""Words of a size: 12 fl oz."""
EXAMPLE = 'Write what it is, =, and its number, as in "Orange syrup, 250 mL=9521234543213".'


def article_called(name: str, fluid_ounce: str) -> tuple[str, Quantity | None]:
    """Return the product and the size of bottles that a name has at its end.

    >>> product, size = article_called("Orange syrup, 250mL", "US")
    >>> product, size.amount
    ('Orange syrup', 250000)
    """
    words = name.split()
    for count in range(1, min(MOST_WORDS, len(words) - 1) + 1):
        try:
            size = parse_quantity(" ".join(words[-count:]), fluid_ounce=fluid_ounce)
        except LedgerError:
            continue
        product = " ".join(words[:-count]).rstrip(" ,")
        if size.measure is Measure.UL and product:
            return product, size
    return name, None


def read_article(text: str, fluid_ounce: str) -> tuple[str, Quantity | None, str | None]:
    """Return a product, the size of its bottles and its number as a person writes them.

    The number is None where the text ends in `=`, which takes an article away.

    Raises:
        InputError: It does not say what has the number, or the number is none.
    """
    what, parted, number = text.rpartition("=")
    if not parted or not what.strip():
        raise InputError(f"{visible(text)} does not say of what it is the number.", EXAMPLE)
    product, size = article_called(read_text(what, "article"), fluid_ounce)
    return product, size, read_gtin(number) if number.strip() else None


def articles_with(
    old: Sequence[Article], told: Iterable[tuple[str, Quantity | None, str | None]]
) -> tuple[Article, ...]:
    """Return articles as they are after some were told anew, or taken away.

    Raises:
        InputError: What is to be taken away is not there.
    """
    now = {_key(article.product, article.size): article for article in old}
    for product, size, gtin in told:
        key = _key(product, size)
        if gtin:
            now[key] = Article(product, gtin, size)
        elif now.pop(key, None) is None:
            raise InputError(
                f"{product_and_size(product, size)} has no number that could be taken away.",
                "pottle house lists the articles that have one.",
            )
    return tuple(now.values())


def article_of(house: House | None, name: str) -> Article | None:
    """Return the article that lots with a name are of; None where the house told of none."""
    if house is None or not house.articles:
        return None
    key = _key(*article_called(name, house.fluid_ounce))
    return next((each for each in house.articles if _key(each.product, each.size) == key), None)


def product_and_size(product: str, size: Quantity | None) -> str:
    """Return what an article is called, which is what its lots are called.

    >>> from ledger.domain.amounts.quantity import parse_quantity
    >>> product_and_size("Orange syrup", parse_quantity("250mL"))
    'Orange syrup, 250 mL'
    """
    return f"{product}, {tidy(size.written)}" if size else product


def _key(product: str, size: Quantity | None) -> tuple[str, int | None]:
    return product.casefold(), size.amount if size else None
