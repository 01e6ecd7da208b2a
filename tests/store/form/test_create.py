"""A new file is made at once, as its migrations would have made it step by step."""

import errno
import os
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import Connection

from ledger.errors import StorageError
from ledger.store.engine import patience
from ledger.store.engine.connections import Engine, connected, reading, writing
from ledger.store.form.create import create_book, use_write_ahead_log
from ledger.store.form.kept import by_name
from ledger.store.form.migrate import migrate
from ledger.store.form.schema import stored_schema
from tests.keeper import Keeper

MARKS = ("application_id", "user_version", "page_size", "encoding", "auto_vacuum")


def told(engine: Engine) -> tuple[dict[str, str], list[object], list[object]]:
    """Return the form of a file, its number, and the marks in its header."""
    with reading(engine) as connection:
        form = by_name(stored_schema(connection))
        number = connection.exec_driver_sql("SELECT * FROM alembic_version").scalars().all()
        marks = [connection.exec_driver_sql(f"PRAGMA {mark}").scalar() for mark in MARKS]
    return form, [*number], marks


def test_a_new_file_is_what_its_migrations_would_have_made(tmp_path: Path) -> None:
    with connected(str(tmp_path / "migrated.db")) as migrated:
        with writing(migrated) as connection:
            migrate(connection)
        wanted = told(migrated)
    where = str(tmp_path / "new.db")
    with connected(where) as engine:
        create_book(engine, where)
        assert told(engine) == wanted


def test_all_is_there_when_the_book_is_filled(tmp_path: Path) -> None:
    found: list[str] = []

    def fill(connection: Connection) -> None:
        found.extend(by_name(stored_schema(connection)))

    where = str(tmp_path / "new.db")
    with connected(where) as engine:
        create_book(engine, where, fill)
    assert {"table entry", "view on_hand", "trigger guard_entry_update"} <= {*found}


def refused(where: str) -> tuple[tuple[str, str], ...]:
    with connected(where) as engine, pytest.raises(StorageError) as raised:
        create_book(engine, where)
    return tuple((what, todo) for what, todo in raised.value.problems)


def test_no_book_is_made_over_a_file_or_where_there_is_no_folder(tmp_path: Path) -> None:
    there, nowhere = tmp_path / "there.db", tmp_path / "none" / "new.db"
    there.write_bytes(b"kept")
    assert refused(str(there)) == (
        (
            f"There is a file at {there} already; it was left as it is.",
            "Open that book, or give another place with --ledger.",
        ),
    )
    assert there.read_bytes() == b"kept"
    assert refused(str(nowhere)) == (
        (
            f"The book {nowhere} could not be made: {os.strerror(errno.ENOENT)}.",
            "Choose a folder that exists and that you may write in.",
        ),
    )


def test_a_file_whose_mode_cannot_be_changed_says_why_and_what_to_do(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Somebody else holds it; SQLite, "Result Codes", SQLITE_BUSY."""
    monkeypatch.setattr(patience, "BUSY_MS", 0)
    held = tmp_path / "held.db"
    with closing(sqlite3.connect(held)) as other, connected(str(held)) as engine:
        engine.raw_connection().close()
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StorageError) as raised:
            use_write_ahead_log(engine)
    assert raised.value.problems == (
        (
            "The new book could not be written: database is locked.",
            "Choose a place with room enough.",
        ),
    )


def test_a_database_that_holds_a_book_is_left_as_it_is(postgres_keeper: Keeper) -> None:
    before = postgres_keeper.bodies()
    assert refused(postgres_keeper.book.where) == (
        (
            "The database holds a book already; it was left as it is.",
            "Open that book, or make a new database for another.",
        ),
    )
    assert postgres_keeper.bodies() == before


def test_a_new_file_is_private_and_lets_readers_go_on_beside_a_writer(tmp_path: Path) -> None:
    where = tmp_path / "new.db"
    with connected(str(where)) as engine:
        create_book(engine, str(where))
        assert where.stat().st_mode & 0o777 == 0o600
        with reading(engine) as connection:
            assert connection.exec_driver_sql("PRAGMA journal_mode").scalar() == "wal"


def test_a_log_that_another_book_left_is_not_taken_up_by_a_new_one(tmp_path: Path) -> None:
    where, left = tmp_path / "new.db", tmp_path / "new.db-wal"
    left.write_bytes(b"frames")
    assert refused(str(where)) == (
        (
            f"There is a file {left}, left by another book that was at {where}.",
            "Move it to a safe place first: it may hold that book's last entries.",
        ),
    )
    assert (left.read_bytes(), where.exists()) == (b"frames", False)
