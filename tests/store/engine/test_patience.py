"""A server is not waited for without end, and a writer that stops is put out."""

import time

import pytest
from sqlalchemy import make_url, text

from ledger.errors import StorageError
from ledger.service.desk.book import open_book, wall_clock
from ledger.store.engine import connections, patience
from tests.keeper import Keeper


def test_a_turn_that_does_not_come_is_told(
    postgres_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "BUSY_MS", 100)
    with (
        open_book(postgres_keeper.book.where) as other,
        postgres_keeper.book.writing(),
        pytest.raises(StorageError) as raised,
        other.writing(),
    ):
        pass
    assert raised.value.problems == (patience._TOO_LONG["55P03"],)


def test_a_writer_that_stops_loses_its_turn_and_the_next_one_writes(
    postgres_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "IDLE_MS", 100)
    before = postgres_keeper.bodies()

    def stop() -> None:
        with postgres_keeper.book.writing() as connection:
            time.sleep(0.5)
            connection.execute(text("SELECT 1"))

    with pytest.raises(StorageError):
        stop()
    monkeypatch.undo()
    postgres_keeper.do("note", text="Written on.")
    assert len(postgres_keeper.bodies()) == len(before) + 1


def test_a_statement_without_an_end_is_given_up(
    postgres_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "STATEMENT_MS", 100)
    with (
        open_book(postgres_keeper.book.where) as book,
        pytest.raises(StorageError) as raised,
        book.reading() as connection,
    ):
        connection.execute(text("SELECT pg_sleep(5)"))
    assert raised.value.problems == (patience._TOO_LONG["57014"],)


def test_what_an_address_says_of_patience_counts() -> None:
    url = make_url("postgresql+psycopg://host/book?connect_timeout=3&options=-c%20jit%3Doff")
    assert patience.of_server(url).keys() == {
        "keepalives_idle",
        "keepalives_interval",
        "keepalives_count",
    }


def test_what_is_recorded_on_a_server_has_the_time_of_its_clock(postgres_keeper: Keeper) -> None:
    book = postgres_keeper.book
    with book.writing() as connection:
        assert book.now(connection) == postgres_keeper.clock.now  # a clock that was handed over
        book.clock = wall_clock
        assert book.now(connection) == connections.server_now(connection)
