"""The book of the demonstration, which the tests of its season read."""

from collections.abc import Iterator

import pytest

from ledger.service.desk.book import Book
from tests.demonstration import Demonstration, played_season


@pytest.fixture(scope="session")
def season(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Book, Demonstration]]:
    with played_season(tmp_path_factory) as told:
        yield told
