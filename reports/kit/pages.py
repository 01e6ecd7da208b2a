"""Where the pages of lots are on the web, which is also what a lot is called there."""

from ledger.domain.entries import House


def page_address(house: House | None, code: str) -> str:
    """Return where a lot's page is; nothing where the house puts pages nowhere.

    >>> page_address(House("Quayside", "EUR", web="https://example.com/l"), "BOS-001-S")
    'https://example.com/l/BOS-001-S/'
    """
    return f"{house.web}/{code}/" if house and house.web else ""
