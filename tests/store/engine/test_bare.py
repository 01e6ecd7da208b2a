"""A file is asked and written in without SQLAlchemy, and by it in the same transaction."""

import os
import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError, OperationalError

from ledger.store.engine import bare, patience
from ledger.store.engine.bare import MOST_IDLE, BareEngine, protected
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


def test_only_a_file_that_nobody_can_write_in_is_read_as_such(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One that is not there is none; beside a log with entries the log is read too."""
    book = tmp_path / "a book.db"
    assert protected(str(book)) is None
    book.touch()
    assert protected(str(book)) is None
    address = f"{book.as_uri()}?mode=ro"
    for closed in (book, tmp_path):
        monkeypatch.setattr(os, "access", lambda path, _how, closed=closed: path != closed)
        assert protected(str(book)) == f"{address}&immutable=1"
    log = tmp_path / "a book.db-wal"
    log.touch()
    assert protected(str(book)) == f"{address}&immutable=1"
    log.write_text("entries")
    assert protected(str(book)) == address
    assert protected("a" * 5000) is None


def test_a_file_that_cannot_be_opened_or_set_up_is_told_as_elsewhere_and_is_let_go(
    tmp_path: Path, sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(DBAPIError, match="unable to open database file"):
        BareEngine(str(tmp_path / "none" / "book.db")).connect()
    engine, seen = engine_of(sqlite_keeper), []

    def broken(driver: sqlite3.Connection) -> None:
        seen.append(driver)
        raise sqlite3.OperationalError("disk I/O error")

    monkeypatch.setattr(bare, "set_up", broken)
    with pytest.raises(DBAPIError, match="disk I/O error"):
        engine.connect()
    with pytest.raises(sqlite3.ProgrammingError, match="closed database"):
        seen[0].execute("SELECT 1")


def test_what_begins_with_an_underscore_is_not_sought_in_the_other_way(
    sqlite_keeper: Keeper,
) -> None:
    with engine_of(sqlite_keeper).connect() as connection:
        with pytest.raises(AttributeError, match=r"^_nothing$"):
            connection._nothing  # noqa: B018
        assert "_whole" not in vars(connection)
