"""The newest copy is the one that is rehearsed with, and one that is damaged is told of."""

import os
from pathlib import Path

import pytest

from ledger.errors import FindingError, InputError, LedgerError
from ledger.service.copies.backup import backup
from ledger.service.copies.rehearsal import rehearse
from ledger.service.desk.book import open_book
from tests.keeper import Keeper, copy_book, silent


def test_the_newest_copy_is_put_back_whatever_its_files_age(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    first = backup(sqlite_keeper.book, tmp_path, silent).path
    sqlite_keeper.clock.forward(days=1)
    sqlite_keeper.do("note", text="Of another day.")
    second = backup(sqlite_keeper.book, tmp_path, silent).path
    os.utime(first)
    sqlite_keeper.do("note", text="After the copy.")
    found = rehearse(sqlite_keeper.book, tmp_path, silent)
    assert (found.copy, found.copies, found.lost) == (second, 2, 1)
    assert found.kept_until == sqlite_keeper.entries()[-2].recorded_at


def test_a_damaged_copy_is_told_of(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    copy = backup(sqlite_keeper.book, tmp_path, silent).path
    copy.write_bytes(copy.read_bytes()[:-4096])
    with pytest.raises(LedgerError):
        rehearse(sqlite_keeper.book, tmp_path, silent)


def test_a_copy_of_another_book_or_none_is_told_with_what_to_do(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Files of other names are no copies."""
    (tmp_path / "pottle-2026-03-02-0123abcd.db.old").write_text("no copy", encoding="utf-8")
    with pytest.raises(FindingError) as raised:
        rehearse(sqlite_keeper.book, tmp_path, silent)
    assert raised.value.problems == (
        (
            f"There is no copy in {tmp_path}, so all of the book would be lost.",
            f"Make one with: pottle backup {tmp_path}",
        ),
    )
    with pytest.raises(InputError) as missing:
        rehearse(sqlite_keeper.book, tmp_path / "none", silent)
    assert missing.value.problems == (
        (f"There is no folder {tmp_path / 'none'}.", "Name the folder of the copies."),
    )


def test_a_copy_with_more_than_the_book_has_is_of_no_earlier_day(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    keeper = sqlite_keeper
    older = copy_book(Path(keeper.book.where), tmp_path / "older.db")
    keeper.do("note", text="Only here.")
    copy = backup(keeper.book, tmp_path, silent).path
    with open_book(str(older), keeper.clock) as book, pytest.raises(FindingError) as raised:
        rehearse(book, tmp_path, silent)
    size = len(keeper.bodies())
    assert raised.value.problems == (
        (
            f"The copy {copy} is not of this book: The seal is of {size} entries and the book has "
            f"{size - 1}: this is an older copy, and entry {size} is not in it.",
            "Keep both as they are; make another copy with: pottle backup DIR",
        ),
    )
