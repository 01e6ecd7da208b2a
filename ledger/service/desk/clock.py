"""The house's own clock.

Guarantees: a day is the day where the house stands, whatever the machine's zone. Refuses: to read a
clock; the moment is handed to it.
"""

from datetime import date, datetime
from functools import cache
from zoneinfo import ZoneInfo, available_timezones

from ledger.domain.entries import House
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.end import last_recorded


@cache
def zones() -> frozenset[str]:
    """Return the names of all time zones; they lie in many files, so they are looked for once.

    >>> "Europe/Dublin" in zones(), "Europe" in zones()
    (True, False)
    """
    return frozenset(available_timezones())


def zone_of(house: House | None) -> ZoneInfo:
    """Return the zone of the house's clock; UTC before there is a house."""
    return ZoneInfo(house.time_zone if house else "UTC")


def zone_on(connection: Connection) -> ZoneInfo:
    """Return the zone of the clock of the book's house; as `zone_of`."""
    return zone_of(queries.house(connection))


def today_on(connection: Connection, now: datetime) -> date:
    """Return the day of a moment on the house's clock."""
    return now.astimezone(zone_on(connection)).date()


def now_at_home(book: Book) -> datetime:
    """Return the present moment on the house's clock."""
    return book.clock().astimezone(zone_of(house_of(book)))


def today(book: Book) -> date:
    """Return the day on the house's clock."""
    return now_at_home(book).date()


def written_at(book: Book) -> datetime | None:
    """Return when the newest entry of the book was written; None for a book without any."""
    with book.reading() as connection:
        return last_recorded(connection)


def house_of(book: Book) -> House | None:
    """Return the house."""
    with book.reading() as connection:
        return queries.house(connection)
