"""The house's own clock.

Guarantees: a day is the day where the house stands, whatever the machine's zone. Refuses: to read a
clock; the moment is handed to it.
"""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from ledger.store import queries
from ledger.store.engine import Connection


def zone_on(connection: Connection) -> ZoneInfo:
    """Return the zone of the house's clock; UTC before there is a house."""
    house = queries.house(connection)
    return ZoneInfo(house.time_zone if house else "UTC")


def today_on(connection: Connection, now: datetime) -> date:
    """Return the day of a moment on the house's clock."""
    return now.astimezone(zone_on(connection)).date()
