"""Putting rows into the tables: one, or many of one table."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.errors import StorageError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import How
from ledger.store.engine.statements import ask
from ledger.store.write.rows import insert_many, insert_row
from tests.keeper import Keeper

HASH = bytes(range(32))
PARTS = "SELECT line, substance FROM material_constituents WHERE seq = {seq} ORDER BY line"
STORED = "SELECT height, place FROM tree WHERE height > 40 ORDER BY height, place"


@pytest.fixture(params=["sqlite_keeper", "postgres_keeper"])
def keeper(request: pytest.FixtureRequest) -> Keeper:
    """A book with its people and materials, on each engine."""
    found: Keeper = request.getfixturevalue(request.param)
    return found


def test_rows_go_in_as_they_are_given(keeper: Keeper) -> None:
    """Beside an entry, since the book lets rows in with their entry alone."""
    with at_desk(keeper.book, How(by="AB")) as desk:
        seq = desk.record(Material("peel", "Peel", MaterialKind.OTHER)).seq
        insert_row(desk.connection, "material_constituents", (seq, 1, "oil", 1))
        insert_many(desk.connection, "material_constituents", [(seq, 2, "b", 2), (seq, 3, "c", 3)])
        found = ask(desk.connection, PARTS.format(seq=seq))
        assert [tuple(row) for row in found] == [(1, "oil"), (2, "b"), (3, "c")]


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
