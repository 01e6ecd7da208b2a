"""A file is asked and written in without SQLAlchemy, and by it in the same transaction."""

import sqlite3

import pytest
from sqlalchemy import text
from sqlalchemy.exc import OperationalError

from ledger.store.engine import patience
from ledger.store.engine.bare import MOST_IDLE, BareEngine
from ledger.store.engine.connections import connected, writing
from ledger.store.engine.statements import ask_one, run
from tests.keeper import Keeper

COUNT = "SELECT COUNT(*) FROM person_key"
NEW = "INSERT INTO person_key VALUES (?, ?)"


def engine_of(keeper: Keeper) -> BareEngine:
    keeper.book.close()
    return BareEngine(keeper.book.where)


def test_a_transaction_stands_at_its_end_and_leaves_no_trace_where_it_broke_off(
    sqlite_keeper: Keeper,
) -> None:
    engine = engine_of(sqlite_keeper)
    with (
        pytest.raises(sqlite3.IntegrityError),
        engine.connect().execution_options(writes=True) as connection,
        connection.begin(),
    ):
        connection.driver_connection.executemany(NEW, [("CD", 9), ("CD", 9)])
    with engine.connect() as connection, connection.begin() as transaction:
        assert connection.driver_connection.execute(COUNT).fetchone() == (1,)
        assert connection.get_transaction() is transaction
        assert transaction is not None
    engine.dispose()


def test_what_is_asked_in_the_other_way_is_of_the_same_transaction(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.book.writing() as connection:
        run(connection, NEW, ("CD", 9))
        assert connection.execute(text(COUNT)).scalar_one() == 2
        assert connection.exec_driver_sql("PRAGMA foreign_keys").scalar_one() == 1
        connection.rollback()
    with sqlite_keeper.reading() as connection:
        assert ask_one(connection, COUNT) == 1


def test_a_writer_waits_for_another_and_says_so_as_elsewhere(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "BUSY_MS", 1)
    engine = engine_of(sqlite_keeper)
    with (
        sqlite_keeper.book.writing(),
        engine.connect().execution_options(writes=True) as connection,
        pytest.raises(OperationalError, match="database is locked"),
    ):
        connection.begin()
    engine.dispose()


def test_a_connection_is_used_again_and_few_are_kept(sqlite_keeper: Keeper) -> None:
    engine = engine_of(sqlite_keeper)
    crowd = [engine.connect() for _ in range(MOST_IDLE + 1)]
    for one in crowd:
        with one:
            pass
    again = engine.connect()
    assert again.driver_connection is crowd[MOST_IDLE - 1].driver_connection
    with pytest.raises(sqlite3.ProgrammingError, match="closed"):
        crowd[-1].driver_connection.execute(COUNT)
    with again:
        pass
    engine.dispose()


def test_a_bare_engine_is_no_less_careful_than_the_other(sqlite_keeper: Keeper) -> None:
    told = ("synchronous", "foreign_keys", "recursive_triggers", "secure_delete", "cache_size")
    with connected(sqlite_keeper.book.where) as engine, writing(engine) as connection:
        others = [ask_one(connection, f"PRAGMA {name}") for name in told]
    with sqlite_keeper.book.writing() as connection:
        assert [ask_one(connection, f"PRAGMA {name}") for name in told] == others
        assert others[:4] == [3, 1, 1, 1]


def test_a_connection_is_given_back_with_nothing_begun(sqlite_keeper: Keeper) -> None:
    engine = engine_of(sqlite_keeper)
    with engine.connect().execution_options(writes=True) as connection:
        connection.begin()
        connection.driver_connection.execute(NEW, ("CD", 9))
    assert not connection.driver_connection.in_transaction
    with engine.connect() as again, again.begin():
        assert again.driver_connection is connection.driver_connection
        assert again.driver_connection.execute(COUNT).fetchone() == (1,)
    engine.dispose()
