"""Parts of a long reading go on beside the caller, and end with it."""

import sqlite3
import threading
from concurrent.futures import Future
from contextlib import closing

import pytest
from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError, OperationalError

from ledger.service.evidence.verify import verify
from ledger.store.audit import beside as looked_at
from ledger.store.audit.beside import beside
from ledger.store.write.recorder import size
from tests.keeper import Keeper

ENDLESS = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT MAX(i) FROM n"


@pytest.fixture(autouse=True)
def _long(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the books of the tests be long."""
    monkeypatch.setattr(looked_at, "LONG_PAGES", 1)


def thread_of(_connection: Connection) -> int:
    return threading.get_ident()


def test_a_file_is_read_by_another_thread_and_a_server_by_the_caller(
    sqlite_walked: Keeper, postgres_walked: Keeper
) -> None:
    for keeper, is_beside in ((sqlite_walked, True), (postgres_walked, False)):
        with keeper.reading() as connection, beside(connection) as second:
            ran_in = second.ask(thread_of).result()
            assert second.ask(size).result() == size(connection)
        assert (ran_in != threading.get_ident()) is is_beside


def test_a_short_book_is_read_by_the_caller(
    sqlite_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    with sqlite_walked.reading() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        for long, is_beside in ((pages, True), (pages + 1, False)):
            monkeypatch.setattr(looked_at, "LONG_PAGES", long)
            with beside(connection) as second:
                ran_in = second.ask(thread_of).result()
            assert (ran_in != threading.get_ident()) is is_beside


def test_what_is_not_committed_yet_is_read_by_the_caller(sqlite_walked: Keeper) -> None:
    with sqlite_walked.book.writing() as connection, beside(connection) as second:
        assert second.ask(thread_of).result() == threading.get_ident()


def test_a_file_that_keeps_no_write_ahead_log_is_read_by_the_caller(sqlite_walked: Keeper) -> None:
    sqlite_walked.book.close()
    with closing(sqlite3.connect(sqlite_walked.book.where)) as hand:
        assert hand.execute("PRAGMA journal_mode = DELETE").fetchone() == ("delete",)
    with sqlite_walked.reading() as connection, beside(connection) as second:
        assert second.ask(thread_of).result() == threading.get_ident()
    assert verify(sqlite_walked.book).faults == ()


@pytest.mark.parametrize("walked", ["sqlite_walked", "postgres_walked"])
def test_what_a_part_raises_is_raised_to_whoever_asks_for_its_result(
    walked: str, request: pytest.FixtureRequest
) -> None:
    keeper: Keeper = request.getfixturevalue(walked)
    with keeper.reading() as connection, beside(connection) as second:
        part = second.ask(lambda own: own.exec_driver_sql("SELECT nothing").one())
        with pytest.raises(DBAPIError, match="nothing"):
            part.result()


def test_parts_end_with_a_caller_that_is_stopped(sqlite_walked: Keeper) -> None:
    began = threading.Event()

    def read_for_ever(own: Connection) -> int:
        began.set()
        return int(own.exec_driver_sql(ENDLESS).scalar_one())

    def stop_while_reading(connection: Connection) -> None:
        with beside(connection) as second:
            parts.extend(second.ask(read_for_ever) for _ in range(2))
            assert began.wait(10)
            raise KeyboardInterrupt

    parts: list[Future[int]] = []
    with sqlite_walked.reading() as connection, pytest.raises(KeyboardInterrupt):
        stop_while_reading(connection)
    with pytest.raises(OperationalError):
        parts[0].result()
    assert parts[-1].cancelled()
