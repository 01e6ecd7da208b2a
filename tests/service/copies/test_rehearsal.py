"""The newest copy is the one that is rehearsed with, and one that is damaged is told of."""

import os
from pathlib import Path

import pytest

from ledger.errors import LedgerError
from ledger.service.copies.backup import backup
from ledger.service.copies.rehearsal import rehearse
from tests.keeper import Keeper, silent


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
