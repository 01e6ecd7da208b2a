"""Where lots and cases are on the web, which is also what they are called there.

Guarantees: the address that a label's symbol says is one at which a page is written.
"""

from datetime import date

from ledger.domain.entries import House
from ledger.domain.masters.articles import article_of
from ledger.domain.masters.gs1 import RESOLVER, lot_link, lot_path


def page_address(house: House | None, code: str) -> str:
    """Return where a lot's page is; nothing where the house puts pages nowhere.

    >>> page_address(House("Quayside", "EUR", web="https://example.com/l"), "BOS-001-S")
    'https://example.com/l/BOS-001-S/'
    >>> page_address(House("Quayside", "EUR"), "BOS-001-S"), page_address(None, "BOS-001-S")
    ('', '')
    """
    return f"{house.web}/{code}/" if house and house.web else ""


def case_address(house: House | None, number: int) -> str:
    """Return what a case without a number of GS1 is called; nothing where the house has no place.

    >>> case_address(House("Quayside", "EUR", web="https://example.com/l"), 7)
    'https://example.com/l/case/7'
    >>> case_address(House("Quayside", "EUR"), 7), case_address(None, 7)
    ('', '')
    """
    return f"{house.web}/case/{number}" if house and house.web else ""


def symbol_address(
    house: House | None, name: str, code: str, best_before: date | None = None
) -> str:
    """Return the address that the symbol of a bottle's label says; nothing where there is none.

    Where the house told of the number of the article that is its Digital Link, below the house's
    own address where it has one; else that of the lot's page.

    Args:
        house: The house.
        name: What lots such as this are called.
        code: The lot's code.
        best_before: Its date.
    """
    article = article_of(house, name)
    if house is None or article is None:
        return page_address(house, code)
    return lot_link(article.gtin, code, best_before, at=house.web or RESOLVER)


def page_folders(house: House | None, name: str, code: str) -> tuple[str, ...]:
    """Return the folders in which the page of a lot is written, below the place of all pages.

    >>> page_folders(House("Quayside", "EUR"), "Orange syrup, 250 mL", "BOS-001-S")
    ('BOS-001-S',)
    """
    article = article_of(house, name)
    return (code, lot_path(article.gtin, code)) if article else (code,)
