"""The house's own rules in words.

Guarantees: how long records are kept is the house's word; no law is claimed to be met by it.
"""

from calendar import monthrange
from datetime import date

from ledger.domain.entries import House
from reports.kit.format import plural


def keeping_of(house: House) -> str:
    """Return how long the house keeps a record, by its own rule."""
    return f"{plural(house.keep_months or 0, 'month')} beyond the last date on them"


def kept_until(house: House | None, last: date | None) -> str:
    """Return until when a record is kept, by the house's rule and its last date.

    Args:
        house: The house.
        last: The last date on the record: best before, or the day it last left; None: not known.

    >>> kept_until(House("Quayside", "EUR", keep_months=13), date(2027, 1, 31))
    'until 2028-02-29 at least, 13 months beyond 2027-01-31; the book drops nothing'
    """
    if house is None or house.keep_months is None or last is None:
        return "as long as the book, which drops nothing; no rule of the house is in it"
    months = f"{plural(house.keep_months, 'month')} beyond {last}"
    return f"until {_later(last, house.keep_months)} at least, {months}; the book drops nothing"


def _later(day: date, months: int) -> date:
    """Return the day some months later; the last of its month where that is shorter."""
    years, month = divmod(day.month - 1 + months, 12)
    last = monthrange(day.year + years, month + 1)[1]
    return date(day.year + years, month + 1, min(day.day, last))
