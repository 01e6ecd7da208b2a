"""A book is copied as it was at one moment, and its copy is named, private and verified."""

import sqlite3
from contextlib import closing
from pathlib import Path

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
