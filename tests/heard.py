"""What the engine of a book's file is asked to run, with the values of each statement in it."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from ledger.service.desk.book import Book


@contextmanager
def heard(book: Book) -> Iterator[list[str]]:
    """Hear every statement that the engine of a file runs, one act or reading at a time."""
    told: list[str] = []
    with book.engine.connect() as connection:  # the one that is given to whoever comes next
        driver: Any = connection.connection.driver_connection
    driver.set_trace_callback(told.append)
    try:
        yield told
    finally:
        driver.set_trace_callback(None)
