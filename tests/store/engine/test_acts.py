"""An act on a server writes all at its end; what is asked after it wrote sees what it wrote."""

import pytest
from sqlalchemy import text

from ledger.errors import StorageError
from ledger.store.engine.acts import acting
from ledger.store.engine.statements import ask_one, run
from tests.keeper import Keeper

COUNT = "SELECT COUNT(*) FROM person_key"
PERSON = "INSERT INTO person_key VALUES (%s, %s)"


def test_what_an_act_writes_is_seen_by_what_it_asks(postgres_keeper: Keeper) -> None:
    following = len(postgres_keeper.bodies()) + 1
    with acting(postgres_keeper.book.engine) as connection:
        assert ask_one(connection, COUNT) == 1
        run(connection, PERSON, ("CD", following))
        assert ask_one(connection, COUNT) == 2
        connection.rollback()


def test_what_is_asked_past_the_store_sees_it_too(postgres_keeper: Keeper) -> None:
    following = len(postgres_keeper.bodies()) + 1
    with acting(postgres_keeper.book.engine) as connection:
        run(connection, PERSON, ("CD", following))
        assert connection.execute(text(COUNT)).scalar_one() == 2
        connection.rollback()


def test_what_the_book_refuses_at_the_end_leaves_no_trace(postgres_keeper: Keeper) -> None:
    before = postgres_keeper.bodies()
    with (
        pytest.raises(StorageError) as raised,
        acting(postgres_keeper.book.engine) as connection,
    ):
        run(connection, PERSON, ("CD", 9999))
    assert raised.value.problems == (
        (
            "The book refused what was to be stored: The book is only ever added to.",
            "Nothing was recorded. Run pottle verify to see whether the book is sound.",
        ),
    )
    assert postgres_keeper.bodies() == before
    with postgres_keeper.reading() as connection:
        assert ask_one(connection, COUNT) == 1
