"""What every copy is: never in the place of a file, never of a book that was changed."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace

from ledger.errors import FindingError, StorageError
from ledger.service.copies.backup import backup
from ledger.service.copies.copied import check_file
from ledger.service.copies.export import export
from ledger.service.copies.restore import restore
from ledger.service.evidence.seal import seal
from tests.conftest import opened
from tests.keeper import LATER, Keeper, SetClock, silent
from tests.service.hostile import run, text_put


def test_no_copy_takes_the_place_of_a_file(full: Keeper, tmp_path: Path) -> None:
    made = backup(full.book, tmp_path, silent)
    assert not backup(full.book, tmp_path, silent).is_new
    kept = made.path.read_bytes()
    there = tmp_path / "there.db"
    there.write_text("Mine.")
    is_lines = made.path.suffix == ".jsonl"
    tries: list[tuple[Callable[[], object], str]] = [
        (lambda: export(full.book, there, silent), "file"),
        (lambda: restore(made.path, str(there), silent), "file at" if is_lines else "file"),
    ]
    for attempt, what in tries:
        with pytest.raises(StorageError) as raised:
            attempt()
        assert raised.value.what == f"There is a {what} {there} already; it was left as it is."
    assert (made.path.read_bytes(), there.read_text()) == (kept, "Mine.")


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


def test_of_a_book_in_which_much_does_not_fit_ten_things_are_told(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    book = Path(sqlite_walked.book.where)
    with closing(sqlite3.connect(book)) as client:
        guards = "SELECT name FROM sqlite_master WHERE type = 'trigger' ORDER BY name"
        lost = [name for (name,) in client.execute(guards)]
        for name in lost:
            client.execute(f'DROP TRIGGER "{name}"')
        client.commit()
    with pytest.raises(FindingError) as raised:
        backup(sqlite_walked.book, tmp_path, silent)
    assert raised.value.problems == (
        *((f"The book has lost its trigger {name}.", "") for name in lost[:10]),
        ("At least 40 more things do not fit.", "No copy was kept. Run pottle verify."),
    )


def test_a_whole_copy_of_another_book_is_no_copy_of_this_one(whole: Path) -> None:
    with opened(str(whole), SetClock(LATER)) as keeper:
        told = seal(keeper.book)
    check_file(whole, told, silent)
    with pytest.raises(FindingError) as raised:
        check_file(whole, replace(told, root="0" * 64), silent)
    assert raised.value.problems == (
        (
            "The copy does not have the root of the book.",
            "No copy was kept. Run pottle verify.",
        ),
    )
