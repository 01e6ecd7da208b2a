"""The spirit account of a period, over all that stood before it or moved in it.

Guarantees: every lot that holds alcohol then is in it, extracts as well as spirit; lots of spirit
without a strength are named; an entry counts on the day of the clock it was written by, whatever
the house's clock is now. Refuses: a period that ends before it begins.
"""

from datetime import date, timedelta

from msgspec import Struct

from ledger.errors import InputError, LedgerError, attempt, together
from ledger.science.contents.spirit import SpiritAccount, account
from ledger.service.desk.book import Book
from ledger.service.desk.clock import today_on
from ledger.service.desk.times import read_day
from ledger.service.glass.alcohol import alcohol_of


class SpiritReport(Struct, frozen=True):
    """A spirit account with its period."""

    first: date
    """Its first day on the house's clock."""
    last: date
    """Its last day."""
    account: SpiritAccount
    """The account."""
    names: dict[str, str]
    """Names of the spirit lots by code."""
    unknown: tuple[str, ...]
    """Codes of lots of spirit whose strength is not in the book; they count as nothing."""


def spirit_account(book: Book, first: str | None, last: str | None) -> SpiritReport:
    """Return the spirit account from one day to another, both counted.

    Args:
        book: The book.
        first: The first day; None: the first of the year of the last.
        last: The last day; None: today.

    Raises:
        InputError: A day cannot be read, or the last is before the first.
    """
    with book.reading() as connection:
        since, until = _period(first, last, today_on(connection, book.clock()))
        found = alcohol_of(connection, *_around(since, until))
    return SpiritReport(
        since,
        until,
        account(
            found.flows,
            (_midnight(since), _midnight(until + timedelta(days=1))),
            frozenset(found.spirits),
            found.finished,
        ),
        {code: lot.name for code, lot in found.spirits.items()},
        tuple(sorted(code for code, lot in found.spirits.items() if lot.abv is None)),
    )


def _period(first: str | None, last: str | None, today: date) -> tuple[date, date]:
    """Return the first and the last day of the period asked for."""
    wrong = list[LedgerError]()
    until = attempt(wrong, lambda: read_day(last), today) if last else today
    since = attempt(wrong, lambda: read_day(first), today) if first else date(until.year, 1, 1)
    if wrong:
        raise together(wrong)
    if until < since:
        raise InputError(
            f"The period would end on {until}, before it begins on {since}.",
            "Give --from the earlier day.",
        )
    return since, until


def _around(first: date, last: date) -> tuple[str, str]:
    """Return moments before and after all that a clock anywhere shows on the days of a period."""
    return f"{_midnight(first - timedelta(days=1))}Z", f"{_midnight(last + timedelta(days=2))}Z"


def _midnight(day: date) -> str:
    return f"{day}T00:00:00"
