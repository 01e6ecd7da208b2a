"""Putting rows into the tables: one, or many of one table."""

import pytest

from ledger.errors import StorageError
from ledger.store.engine.statements import ask
from ledger.store.write.rows import insert_many, insert_row
from tests.keeper import Keeper

HASH = bytes(range(32))
STORED = "SELECT height, place FROM tree WHERE height > 40 ORDER BY height, place"


@pytest.fixture(params=["sqlite_keeper", "postgres_keeper"])
def keeper(request: pytest.FixtureRequest) -> Keeper:
    """A book with its people and materials, on each engine."""
    found: Keeper = request.getfixturevalue(request.param)
    return found


def test_rows_go_in_as_they_are_given(keeper: Keeper) -> None:
    with keeper.book.writing() as connection:
        insert_row(connection, "tree", (50, 1, HASH))
        insert_many(connection, "tree", [(51, 1, HASH), (51, 2, HASH)])
        assert [tuple(row) for row in ask(connection, STORED)] == [(50, 1), (51, 1), (51, 2)]


def test_a_row_that_is_there_is_not_put_in_again(keeper: Keeper) -> None:
    with pytest.raises(StorageError) as raised:
        _insert_twice(keeper)
    assert raised.value.what.startswith("The book refused what was to be stored: ")
    with keeper.reading() as connection:
        assert ask(connection, STORED) == []


def _insert_twice(keeper: Keeper) -> None:
    with keeper.book.writing() as connection:
        for _ in range(2):
            insert_many(connection, "tree", [(50, 1, HASH)])
