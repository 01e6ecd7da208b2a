"""Opening and making a book: each thing that stands in the way is told in words."""

import os
import sqlite3
import stat
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import psycopg
import pytest
from sqlalchemy.exc import DatabaseError, OperationalError

from ledger.errors import InputError, LedgerError, StorageError
from ledger.service.desk.book import open_book
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import init
from ledger.store.engine import connections, patience
from ledger.store.engine.connections import (
    SCHEMA_VERSION,
    connected,
    is_writing,
    protected,
    server_now,
    writing,
)
from ledger.store.engine.statements import ask_one
from tests.conftest import Server, opened
from tests.keeper import Keeper, SetClock, copy_book
from tests.path import HOUSE


def problems_of(error: LedgerError) -> tuple[str, str]:
    (problem,) = error.problems
    return problem


def test_a_new_file_is_its_owners_alone(tmp_path: Path) -> None:
    where = tmp_path / "book.db"
    init(str(where), **HOUSE)
    assert stat.S_IMODE(where.stat().st_mode) == 0o600


def test_a_commit_reaches_the_disk_with_its_folder(template: Path) -> None:
    """EXTRA, which is 3, keeps a commit without a write-ahead log when the power fails after it.

    https://sqlite.org/pragma.html#pragma_synchronous
    """
    with connected(str(template)) as engine, engine.connect() as connection:
        assert connection.exec_driver_sql("PRAGMA synchronous").scalar_one() == 3


def test_a_book_in_the_way_is_left_as_it_is(template: Path) -> None:
    before = template.read_bytes()
    with pytest.raises(StorageError) as raised:
        init(str(template), **HOUSE)
    assert problems_of(raised.value) == (
        f"There is a file at {template} already; it was left as it is.",
        "Open that book, or give another place with --ledger.",
    )
    assert template.read_bytes() == before


def test_a_book_in_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    where = tmp_path / "nowhere" / "book.db"
    with pytest.raises(StorageError) as raised:
        init(str(where), **HOUSE)
    assert problems_of(raised.value) == (
        f"The book {where} could not be made: No such file or directory.",
        "Choose a folder that exists and that you may write in.",
    )


def test_a_house_that_cannot_be_read_makes_no_book(tmp_path: Path) -> None:
    where = tmp_path / "book.db"
    with pytest.raises(InputError) as raised:
        init(str(where), name=" ", currency="Euro", time_zone="Dublin", fluid_ounce="metric")
    assert raised.value.problems == (
        ("The name of the house is missing.", "Give the name of the house in words."),
        ('"Euro" is not a currency code.', "Write three letters, such as EUR."),
        ('"Dublin" is not a time zone.', "Write one such as Europe/Dublin or America/Chicago."),
        ('"metric" is not a fluid ounce.', "Choose US or imperial."),
    )
    assert not where.exists()


def test_a_missing_book_is_told(tmp_path: Path) -> None:
    where = tmp_path / "book.db"
    with pytest.raises(StorageError) as raised:
        open_book(str(where))
    assert problems_of(raised.value) == (
        f"There is no book at {where}.",
        'Make one with: pottle init --house "NAME" --currency EUR',
    )
    assert not where.exists()


@pytest.mark.parametrize("content", [b"", b"A shopping list, long enough to be no header." * 40])
def test_a_file_that_is_no_book_is_told(content: bytes, tmp_path: Path) -> None:
    where = tmp_path / "book.db"
    where.write_bytes(content)
    with pytest.raises(StorageError) as raised:
        open_book(str(where))
    assert problems_of(raised.value) == (
        f"The file {where} is not a book of pottle.",
        "Name the right file with --ledger, or make a book elsewhere with: pottle init",
    )


@pytest.mark.parametrize(
    ("version", "what", "todo"),
    [
        (
            SCHEMA_VERSION + 1,
            f"is of version {SCHEMA_VERSION + 1}; this pottle knows versions up to "
            f"{SCHEMA_VERSION}.",
            "Use the newer pottle that wrote it. Nothing was changed.",
        ),
        (
            1,
            f"is of version 1; this pottle writes version {SCHEMA_VERSION}.",
            "Run pottle upgrade, which keeps a copy first. Nothing was changed.",
        ),
    ],
    ids=["newer", "older"],
)
def test_a_book_of_another_version_is_told(
    version: int, what: str, todo: str, sqlite_keeper: Keeper
) -> None:
    where = sqlite_keeper.book.where
    with closing(sqlite3.connect(where)) as connection:
        connection.execute(f"PRAGMA user_version = {version}")
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert problems_of(raised.value) == (f"The book {where} {what}", todo)


def test_a_database_without_a_book_is_told(server: Server) -> None:
    with pytest.raises(StorageError) as raised:
        open_book(server.where(server.new_database()))
    assert problems_of(raised.value) == (
        "The database named in POTTLE_LEDGER holds no book.",
        'Make one with: pottle init --house "NAME" --currency EUR',
    )


def test_a_folder_and_a_name_that_no_file_can_have_are_no_books(tmp_path: Path) -> None:
    long = str(tmp_path / ("x" * 300))
    for where, told in (
        (
            str(tmp_path),
            (
                f"{tmp_path} is a folder, and a book is a file.",
                "Name the file in it with --ledger.",
            ),
        ),
        (long, (f"No book can be named {long}: File name too long.", "Give a shorter name.")),
    ):
        with pytest.raises(StorageError) as raised:
            open_book(where)
        assert problems_of(raised.value) == told


@pytest.mark.parametrize(
    ("change", "versions"),
    [
        (
            "ALTER TABLE alembic_version DISABLE TRIGGER ALL; "
            "INSERT INTO alembic_version VALUES ('0007')",
            "['0007', '0008']",
        ),
        ("UPDATE alembic_version SET version_num = 'eight'", "['eight']"),
        ("DELETE FROM alembic_version", "[]"),
    ],
)
def test_a_version_that_somebody_wrote_into_on_a_server_is_told(
    change: str, versions: str, postgres_keeper: Keeper
) -> None:
    where = postgres_keeper.book.where
    with psycopg.connect(where.replace("+psycopg", "")) as connection:
        connection.execute(change)
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert problems_of(raised.value) == (
        f"The book's version is written as {versions}, where one number was expected.",
        "Somebody wrote into its table alembic_version: ask the keeper of the server to put it "
        "right. Nothing was changed.",
    )


@pytest.mark.parametrize("act", [open_book, lambda where: init(where, **HOUSE)])
def test_a_server_that_is_not_there_is_told(act: Callable[[str], object], tmp_path: Path) -> None:
    with pytest.raises(StorageError) as raised:
        act(f"postgresql+psycopg://nobody@/none?host={tmp_path}")
    what, todo = problems_of(raised.value)
    assert what.startswith("The server of the book did not answer: ")
    assert todo == "Check that it runs and that the address in POTTLE_LEDGER is right."


def test_a_second_book_in_one_database_is_refused(postgres_keeper: Keeper) -> None:
    before = postgres_keeper.bodies()
    with pytest.raises(LedgerError) as raised:
        init(postgres_keeper.book.where, **HOUSE)
    assert problems_of(raised.value) == (
        "The database holds a book already; it was left as it is.",
        "Open that book, or make a new database for another.",
    )
    assert postgres_keeper.bodies() == before


def test_a_writer_that_waits_too_long_is_told(
    template: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "BUSY_MS", 10)
    where = str(copy_book(template, tmp_path / "book.db"))
    with (
        opened(where, SetClock()) as keeper,
        closing(sqlite3.connect(where, isolation_level=None)) as other,
    ):
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StorageError) as raised:
            keeper.do("note", text="Waiting.")
    assert problems_of(raised.value) == (
        "The book could not be read or written: database is locked.",
        "Check the disk, the permissions and that nothing else holds the book.",
    )


@pytest.fixture
def guarded(template: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A book whose file nobody may write in, nor make another beside it."""
    where = copy_book(template, tmp_path / "book.db")
    with closing(sqlite3.connect(where)) as client:
        client.execute("PRAGMA journal_mode = WAL")
    may = os.access
    monkeypatch.setattr(os, "access", lambda path, mode: mode != os.W_OK and may(path, mode))
    return where


def test_a_write_protected_book_is_read_and_nothing_is_made_beside_it(guarded: Path) -> None:
    with opened(str(guarded), SetClock()) as keeper:
        assert len(keeper.entries()) == 8
        assert not verify(keeper.book).faults
    assert [path.name for path in guarded.parent.iterdir()] == ["book.db"]


def test_what_cannot_be_recorded_in_a_write_protected_book_is_told(guarded: Path) -> None:
    with opened(str(guarded), SetClock()) as keeper, pytest.raises(StorageError) as raised:
        keeper.do("note", text="Too late.")
    assert problems_of(raised.value) == (
        "The book is write-protected: it can be read, and nothing can be recorded in it.",
        "Give yourself the right to write the file and its folder, or go on in a copy: "
        "pottle restore FILE --to PATH",
    )


def test_a_log_beside_a_write_protected_book_is_not_passed_over(guarded: Path) -> None:
    assert (protected(str(guarded)) or "").endswith("?mode=ro&immutable=1")
    guarded.with_name("book.db-wal").write_bytes(b"an entry that is not in the file yet")
    assert (protected(str(guarded)) or "").endswith("?mode=ro")


def test_the_disk_is_asked_to_keep_what_it_was_given(sqlite_keeper: Keeper) -> None:
    # https://sqlite.org/pragma.html: fullfsync works on macOS and is harmless elsewhere.
    with sqlite_keeper.reading() as connection:
        for pragma in ("fullfsync", "checkpoint_fullfsync"):
            assert connection.exec_driver_sql(f"PRAGMA {pragma}").scalar_one() == 1


def test_a_server_tells_a_writer_the_time_and_a_file_tells_none(
    sqlite_keeper: Keeper, postgres_keeper: Keeper
) -> None:
    with sqlite_keeper.book.writing() as connection:
        assert is_writing(connection)
        assert server_now(connection) is None
    with sqlite_keeper.reading() as connection:
        assert not is_writing(connection)
        assert server_now(connection) is None
    before = datetime.now(UTC)
    with connected(postgres_keeper.book.where) as engine, writing(engine) as connection:
        now = server_now(connection)
    assert now is not None
    assert before - timedelta(seconds=1) < now < datetime.now(UTC) + timedelta(seconds=1)


def test_a_file_that_may_not_be_read_and_one_that_is_torn_are_told_apart(
    template: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The root of a machine may read any file, so the refusal is put in by hand."""
    where = str(copy_book(template, tmp_path / "book.db"))
    refusals = {
        "unable to open database file": (
            OperationalError,
            "Check that you may read and write the file and its folder.",
        ),
        "database disk image is malformed": (DatabaseError, connections._DAMAGED),
    }
    for words, (kind, todo) in refusals.items():

        def refused(*_: object, kind: type[DatabaseError] = kind, words: str = words) -> None:
            raise kind("", None, sqlite3.DatabaseError(words))

        monkeypatch.setattr(connections, "ask_one", refused)
        with pytest.raises(StorageError) as raised:
            open_book(where)
        assert problems_of(raised.value) == (
            f"The book {where} could not be opened: {words}.",
            todo,
        )


def test_who_reads_a_server_sees_it_at_one_moment(postgres_keeper: Keeper) -> None:
    with postgres_keeper.reading() as connection:
        assert ask_one(connection, "SHOW transaction_isolation") == "repeatable read"
