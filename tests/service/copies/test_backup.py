"""A book is copied, restored and carried from one engine to the other with every entry."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from ledger.errors import FindingError, InputError, StorageError
from ledger.service.copies.backup import backup
from ledger.service.copies.export import export
from ledger.service.copies.import_ import import_book
from ledger.service.copies.restore import restore
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from tests.conftest import Server, opened
from tests.keeper import Keeper, SetClock, silent
from tests.service.hostile import audited, found_in, run, text_put


@pytest.fixture(params=["file", "server"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A place where no book is."""
    if request.param == "file":
        return str(tmp_path / "new.db")
    server: Server = request.getfixturevalue("server")
    return server.where(server.new_database())


def test_a_book_is_carried_to_any_place_with_its_root(
    full: Keeper, place: str, tmp_path: Path
) -> None:
    told: list[tuple[int, int]] = []
    made = export(full.book, tmp_path / "book.jsonl", silent)
    put = import_book(made.path, place, lambda done, total: told.append((done, total)), full.clock)
    assert told[-1] == (made.seal.entries, made.seal.entries)
    with opened(place, full.clock) as carried:
        assert put.seal == made.seal == seal(full.book) == seal(carried.book)
        assert verify(carried.book).faults == ()
        assert carried.bodies() == full.bodies()
        assert carried.do("note", text="Written on.").seq == made.seal.entries + 1
    export(full.book, tmp_path / "again.jsonl", silent)
    assert (tmp_path / "again.jsonl").read_bytes() == made.path.read_bytes()


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
    with opened(sqlite_walked.book.where, SetClock()) as other:

        def write(done: int, total: int) -> None:
            if len(other.bodies()) == before:
                other.do("note", text="Meanwhile.")

        made = backup(sqlite_walked.book, tmp_path, write)
    assert made.seal.entries == before
    assert len(sqlite_walked.bodies()) == before + 1
    assert audited(made.path).entries == before


def test_no_copy_takes_the_place_of_a_file(full: Keeper, tmp_path: Path) -> None:
    made = backup(full.book, tmp_path, silent)
    kept = made.path.read_bytes()
    there = tmp_path / "there.db"
    there.write_text("Mine.")
    tries: list[Callable[[], object]] = [
        lambda: backup(full.book, tmp_path, silent),
        lambda: export(full.book, there, silent),
        lambda: restore(made.path, str(there), silent),
    ]
    for attempt in tries:
        with pytest.raises(StorageError) as raised:
            attempt()
        assert raised.value.what.endswith("already; it was left as it is.")
    assert (made.path.read_bytes(), there.read_text()) == (kept, "Mine.")


def test_a_place_with_a_book_takes_no_other(full: Keeper, tmp_path: Path) -> None:
    made = export(full.book, tmp_path / "book.jsonl", silent)
    before = full.bodies()
    with pytest.raises(StorageError) as raised:
        import_book(made.path, full.book.where, silent)
    assert raised.value.what.endswith("already; it was left as it is.")
    assert full.bodies() == before


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


def test_a_missing_folder_is_said(full: Keeper, tmp_path: Path) -> None:
    with pytest.raises(StorageError) as raised:
        export(full.book, tmp_path / "none" / "book.jsonl", silent)
    assert raised.value.problems == (
        (
            f"The file {tmp_path / 'none' / 'book.jsonl'} could not be written: No such file or "
            "directory.",
            "Choose a folder that exists, has room, and that you may write in.",
        ),
    )


def test_a_changed_book_is_neither_backed_up_nor_exported(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    body = dict(sqlite_walked.bodies())[1].replace("Quayside", "Baywalk").encode()
    run(Path(sqlite_walked.book.where), text_put(1, body, hashed=True))
    with pytest.raises(FindingError):
        backup(sqlite_walked.book, tmp_path, silent)
    with pytest.raises(FindingError) as raised:
        export(sqlite_walked.book, tmp_path / "book.jsonl", silent)
    assert raised.value.problems == (
        (
            "The entries do not have the root of the book's own tree.",
            "Nothing was written. Run pottle verify to see what does not fit.",
        ),
    )
    assert {path.name for path in tmp_path.iterdir()} <= {
        "walked.db",
        "walked.db-wal",
        "walked.db-shm",
    }


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
    assert raised.value.what == (
        "A server takes a book in lines, and this backup is a file of SQLite."
    )
