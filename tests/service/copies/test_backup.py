"""A book is copied as it was at one moment, and its copy is named, private and verified."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from ledger.errors import StorageError
from ledger.service.copies.backup import backup
from ledger.service.copies.restore import restore
from ledger.service.evidence.verify import verify
from tests.conftest import opened
from tests.keeper import Keeper, SetClock, silent
from tests.service.hostile import audited


def test_a_backup_is_named_by_day_and_seal_private_verified_and_restored(
    full: Keeper, tmp_path: Path
) -> None:
    made = backup(full.book, tmp_path, silent)
    is_server = "://" in full.book.where
    assert made.path.name == (
        f"pottle-2026-03-09-{made.seal.root[:8]}.{'jsonl' if is_server else 'db'}"
    )
    assert made.path.stat().st_mode & 0o777 == 0o600
    to = tmp_path / "restored.db"
    assert restore(made.path, str(to), silent, full.clock).seal == made.seal
    assert to.stat().st_mode & 0o777 == 0o600
    with opened(str(to), full.clock) as restored:
        assert verify(restored.book).faults == ()
        assert restored.bodies() == full.bodies()
        restored.do("note", text="Written on.")
    with closing(sqlite3.connect(to)) as client:
        assert client.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".part"] == []


def test_a_backup_is_of_one_moment_while_another_writes(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    before = len(sqlite_walked.bodies())
    with opened(sqlite_walked.book.where, SetClock(sqlite_walked.clock.now)) as other:

        def write(done: int, total: int) -> None:
            if len(other.bodies()) == before:
                other.do("note", text="Meanwhile.")

        made = backup(sqlite_walked.book, tmp_path, write)
    assert made.seal.entries == before
    assert len(sqlite_walked.bodies()) == before + 1
    assert audited(made.path).entries == before


def test_a_copy_goes_into_a_folder_that_is_there_and_one_that_was_made_is_not_made_again(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    file = tmp_path / "note.txt"
    file.write_text("No folder.", encoding="utf-8")
    for folder in (file, file / "below"):
        with pytest.raises(StorageError) as raised:
            backup(sqlite_keeper.book, folder, silent)
        assert raised.value.problems == (
            (
                f"{file} is a file, where a folder to put the copy in was expected.",
                "Name a folder that is there; without a name the copy goes where you are.",
            ),
        )
    none = tmp_path / "my copies"
    with pytest.raises(StorageError) as raised:
        backup(sqlite_keeper.book, none, silent)
    assert raised.value.problems == (
        (
            f"There is no folder {none} to put the copy in.",
            f"Make it with mkdir '{none}', or name one that is there; without a name the copy goes "
            "where you are.",
        ),
    )
    none.mkdir()
    first, again = (backup(sqlite_keeper.book, none, silent) for _ in range(2))
    assert (first.is_new, again.is_new, again.path) == (True, False, first.path)
    kept = first.path.read_bytes()
    first.path.write_bytes(b"torn")
    with pytest.raises(StorageError):
        backup(sqlite_keeper.book, none, silent)
    assert first.path.read_bytes() == b"torn" != kept
