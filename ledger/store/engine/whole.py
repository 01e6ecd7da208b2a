"""SQLAlchemy's own way of asking, within a transaction that was begun without it.

Guarantees: what is asked so sees and changes what the transaction does. Refuses: to end it.
"""

import sqlite3
from functools import cache
from threading import local
from typing import Any

from sqlalchemy import Connection, Engine, create_engine
from sqlalchemy.pool import NullPool


class _Lent:
    """A driver's connection of which somebody else ends the transaction, and closes it."""

    def __init__(self, driver: sqlite3.Connection) -> None:
        self._driver = driver

    def __getattr__(self, name: str) -> Any:  # noqa: ANN401 - a driver's
        return getattr(self._driver, name)

    def commit(self) -> None:
        """Leave that to whom it belongs."""

    rollback = close = commit


class _Next(local):
    """The driver's connection that is lent next, in each thread its own."""

    driver: sqlite3.Connection


_NEXT = _Next()


@cache
def _engine() -> Engine:
    # One for all files: what it has worked out of a statement is of use for the next.
    return create_engine("sqlite://", creator=lambda: _Lent(_NEXT.driver), poolclass=NullPool)


def whole(driver: sqlite3.Connection) -> Connection:
    """Return a connection of SQLAlchemy's upon a driver's."""
    _NEXT.driver = driver
    return _engine().connect()
