"""The form of a book's file, and texts that are no UTF-8."""

import sqlite3
from pathlib import Path

import pytest
from sqlalchemy.exc import DatabaseError, OperationalError

from ledger.store.audit import file
from ledger.store.audit.file import any_text, form_faults, is_damage
from tests.keeper import Keeper
from tests.service.hostile import run, run_openly


def test_bytes_that_are_no_text_come_back_as_they_are(sqlite_keeper: Keeper) -> None:
    query = "SELECT CAST(x'41ff42' AS TEXT)"
    with sqlite_keeper.reading() as connection:
        with any_text(connection):
            (text,) = connection.exec_driver_sql(query).one()
        assert text.encode(errors="surrogateescape") == b"A\xffB"
        with pytest.raises(OperationalError):
            connection.exec_driver_sql(query).one()


@pytest.mark.parametrize(
    ("error", "is_bad"),
    [
        (UnicodeDecodeError("utf-8", b"\xff", 0, 1, "no text"), True),
        (DatabaseError("", None, sqlite3.DatabaseError("malformed")), True),
        (OperationalError("", None, sqlite3.OperationalError("disk I/O error")), False),
    ],
    ids=["no text", "malformed", "a bad disk"],
)
def test_bad_bytes_are_told_from_a_bad_disk(
    error: UnicodeDecodeError | DatabaseError, is_bad: bool
) -> None:
    assert is_damage(error) is is_bad


def test_a_file_as_it_was_made_has_no_faults_and_a_lost_view_is_one(
    sqlite_keeper: Keeper,
) -> None:
    with sqlite_keeper.reading() as connection:
        assert list(form_faults(connection)) == []
    run(Path(sqlite_keeper.book.where), "DROP VIEW verdict")
    with sqlite_keeper.reading() as connection:
        assert list(form_faults(connection)) == ["The book has lost its view verdict."]


def test_a_list_of_tables_that_somebody_changed_is_told_and_statistics_are_no_change(
    sqlite_keeper: Keeper,
) -> None:
    where = Path(sqlite_keeper.book.where)
    run_openly(where, "ANALYZE")
    with sqlite_keeper.reading() as connection:
        assert list(form_faults(connection)) == []
    sqlite_keeper.book.close()
    renamed = "UPDATE sqlite_master SET name = 'ENTRY' WHERE name = 'entry' AND type = 'table'"
    run_openly(where, renamed)
    with sqlite_keeper.reading() as connection:
        assert list(form_faults(connection)) == [
            f"The file's list of tables differs at: table {name} of entry."
            for name in ("ENTRY", "entry")
        ]


def test_what_a_file_is_compared_with_leaves_no_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert ("table", "entry", "entry", 1) in file._kept_list.__wrapped__()
    assert [*tmp_path.iterdir()] == []


def test_of_a_server_no_list_of_a_file_is_asked_and_text_is_read_as_it_is(
    postgres_keeper: Keeper,
) -> None:
    with postgres_keeper.reading() as connection, any_text(connection):
        assert list(form_faults(connection)) == []
