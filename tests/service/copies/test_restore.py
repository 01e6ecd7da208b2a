"""A backup is brought back where no book is, and only when it is one and verifies."""

from pathlib import Path

import pytest

from ledger.errors import FindingError, InputError, StorageError
from ledger.service.copies.backup import backup
from ledger.service.copies.export import export
from ledger.service.copies.restore import restore
from tests.conftest import Server
from tests.keeper import Keeper, silent
from tests.service.hostile import found_in, run


def test_no_book_is_put_beside_the_log_of_another(sqlite_walked: Keeper, tmp_path: Path) -> None:
    """SQLite would write what a log holds into whatever book it finds beside it."""
    left = tmp_path / "gone.db-wal"
    left.write_bytes(b"frames")
    copy = backup(sqlite_walked.book, tmp_path, silent).path
    lines = export(sqlite_walked.book, tmp_path / "book.jsonl", silent).path
    for file in (copy, lines):
        with pytest.raises(StorageError) as raised:
            restore(file, str(tmp_path / "gone.db"), silent)
        assert raised.value.problems == (
            (
                f"There is a file {left}, left by another book that was at {tmp_path / 'gone.db'}.",
                "Move it to a safe place first: it may hold that book's last entries.",
            ),
        )
    assert left.read_bytes() == b"frames"
    assert not (tmp_path / "gone.db").exists()


def test_a_changed_backup_is_not_restored(sqlite_walked: Keeper, tmp_path: Path) -> None:
    made = backup(sqlite_walked.book, tmp_path, silent)
    run(made.path, "UPDATE note SET text = 'Other.'")
    whats = found_in(made.path)
    with pytest.raises(FindingError) as raised:
        restore(made.path, str(tmp_path / "restored.db"), silent)
    assert [what for what, _ in raised.value.problems] == whats
    assert not (tmp_path / "restored.db").exists()


def test_a_file_that_is_no_backup_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "words.txt"
    path.write_text("Only words.")
    with pytest.raises(InputError) as raised:
        restore(path, str(tmp_path / "restored.db"), silent)
    assert raised.value.problems == (
        ("The first line is not that of a book in lines.", "Name a file of pottle export."),
    )


def test_a_server_takes_no_file_of_sqlite(
    server: Server, sqlite_walked: Keeper, tmp_path: Path
) -> None:
    made = backup(sqlite_walked.book, tmp_path, silent)
    with pytest.raises(InputError) as raised:
        restore(made.path, server.where("template1"), silent)
    assert raised.value.problems == (
        (
            "A server takes a book in lines, and this backup is a file of SQLite.",
            "Restore it to a file, then: pottle export FILE.jsonl and pottle import --book.",
        ),
    )
