"""A server is not waited for without end, and a writer that stops is put out."""

import time
from types import SimpleNamespace

import pytest
from sqlalchemy import make_url, text

from ledger.errors import StorageError
from ledger.service.desk.book import open_book, wall_clock
from ledger.store.engine import connections, patience
from tests.keeper import Keeper

BUSY = (
    "Another has been writing in the book for too long, and it was waited for in vain.",
    "Nothing was recorded. Try again; a writer that stopped is put out by the server.",
)
WORKED = (
    "The server worked at the question for too long and gave it up.",
    "Nothing was recorded. Try again later, or ask the keeper of the server.",
)
STOPPED = (
    "This writer stopped for so long that the server took its turn away.",
    "Nothing was recorded. Enter it again.",
)


@pytest.mark.parametrize(
    ("code", "told"),
    [("55P03", BUSY), ("57014", WORKED), ("25P03", STOPPED), ("23505", None), (None, None)],
)
def test_each_time_out_has_its_sentence_by_the_code_of_the_server(
    code: str | None, told: tuple[str, str] | None
) -> None:
    """PostgreSQL, Appendix A: lock_not_available, query_canceled, and the idle session's."""
    assert patience.sentence(SimpleNamespace(sqlstate=code)) == told
    assert patience.sentence(ValueError("of no server")) is None


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
    assert raised.value.problems == (BUSY,)


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
    assert raised.value.problems == (WORKED,)


def test_a_silent_server_is_asked_again_and_waited_for_no_longer_than_said() -> None:
    assert patience.of_server(make_url("postgresql+psycopg://host/book")) == {
        "connect_timeout": 10,
        "keepalives_idle": 20,
        "keepalives_interval": 5,
        "keepalives_count": 4,
        "options": "-c lock_timeout=30000 -c statement_timeout=600000",
    }


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
