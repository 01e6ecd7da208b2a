"""A file has its name only once it is whole; another is replaced when asked, a book never."""

import errno
import fcntl
import os
import sys
import time
from pathlib import Path

import pytest

from ledger.errors import StorageError
from ledger.whole_files import OLD_S, clear_leftovers, is_book, whole_file


def fill(path: Path, words: str) -> None:
    with whole_file(path, is_private=True, may_replace=False) as part:
        part.write_text(words)


def fill_and_break_off(path: Path) -> None:
    with whole_file(path, is_private=True, may_replace=False) as part:
        part.write_text("half")
        for ending in ("-wal", "-shm", "-journal"):
            part.with_name(part.name + ending).write_text("what SQLite keeps beside it")
        raise KeyboardInterrupt


def fill_while_another_does(path: Path) -> None:
    with whole_file(path, is_private=True, may_replace=False) as part:
        part.write_text("other")
        path.write_text("mine")


def test_a_new_file_is_private_and_leaves_nothing_beside_it(tmp_path: Path) -> None:
    fill(tmp_path / "new", "whole")
    assert [path.name for path in tmp_path.iterdir()] == ["new"]
    assert (tmp_path / "new").read_text() == "whole"
    assert (tmp_path / "new").stat().st_mode & 0o777 == 0o600


def test_a_file_that_is_broken_off_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(KeyboardInterrupt):
        fill_and_break_off(tmp_path / "new")
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_is_there_is_left(tmp_path: Path) -> None:
    (tmp_path / "new").write_text("mine")
    with pytest.raises(FileExistsError):
        fill(tmp_path / "new", "other")
    assert (tmp_path / "new").read_text() == "mine"


def test_a_file_that_appears_meanwhile_is_left(tmp_path: Path) -> None:
    with pytest.raises(FileExistsError):
        fill_while_another_does(tmp_path / "new")
    assert [path.name for path in tmp_path.iterdir()] == ["new"]
    assert (tmp_path / "new").read_text() == "mine"


def test_a_link_that_leads_nowhere_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "new").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FileExistsError):
        fill(tmp_path / "new", "other")
    assert not (tmp_path / "elsewhere").exists()


LINES = '{"entries":1,"format":"pottle book 1","house":"Quayside","root":"00"}\n'


def replace(path: Path, words: str) -> None:
    with whole_file(path, is_private=False, may_replace=True) as part:
        part.write_text(words)


def replace_and_break_off(path: Path) -> None:
    with whole_file(path, is_private=False, may_replace=True) as part:
        part.write_text("half")
        for ending in ("-wal", "-shm", "-journal"):
            part.with_name(part.name + ending).write_text("what SQLite keeps beside it")
        raise KeyboardInterrupt


def replace_while_a_book_appears(path: Path) -> None:
    with whole_file(path, is_private=False, may_replace=True) as part:
        part.write_text("paper")
        path.write_text(LINES)


def test_a_file_is_replaced_when_that_is_asked_and_only_by_a_whole_one(tmp_path: Path) -> None:
    path = tmp_path / "paper"
    path.write_text("old")
    with pytest.raises(KeyboardInterrupt):
        replace_and_break_off(path)
    assert path.read_text() == "old"
    replace(path, "new")
    assert path.read_text() == "new"
    assert [left.name for left in tmp_path.iterdir()] == ["paper"]


def test_a_paper_may_be_read_by_whoever_reads_other_files(tmp_path: Path) -> None:
    before = os.umask(0o022)
    try:
        replace(tmp_path / "paper", "new")
    finally:
        os.umask(before)
    assert (tmp_path / "paper").stat().st_mode & 0o777 == 0o644


@pytest.mark.parametrize("name", ["book.db", "book.db-wal", "book.jsonl"])
def test_a_book_is_never_replaced(name: str, tmp_path: Path) -> None:
    (tmp_path / "book.db").write_bytes(b"SQLite format 3\0...")
    (tmp_path / "book.db-wal").write_bytes(b"frames")
    (tmp_path / "book.jsonl").write_text(LINES)
    before = (tmp_path / name).read_bytes()
    with pytest.raises(StorageError) as raised:
        replace(tmp_path / name, "paper")
    assert str(raised.value) == (
        f"{tmp_path / name} is a book, or a copy of one; it was left as it is. Give another name. "
        "No book is ever written over, with --force neither."
    )
    assert (tmp_path / name).read_bytes() == before


def test_a_book_that_appears_meanwhile_is_not_replaced(tmp_path: Path) -> None:
    path = tmp_path / "paper"
    with pytest.raises(StorageError):
        replace_while_a_book_appears(path)
    assert path.read_text() == LINES
    assert [left.name for left in tmp_path.iterdir()] == ["paper"]


def test_other_files_are_no_books(tmp_path: Path) -> None:
    (tmp_path / "paper.pdf").write_bytes(b"%PDF-1.4")
    (tmp_path / "alone-wal").write_bytes(b"frames")
    assert not any(map(is_book, [*tmp_path.iterdir(), tmp_path, tmp_path / "none"]))


def test_what_a_broken_off_try_left_is_cleared_once_it_is_old(tmp_path: Path) -> None:
    old, fresh, other = (tmp_path / name for name in (".a.1.part", ".a.2.part", ".b.3.part"))
    log = tmp_path / ".a.1.part-wal"
    for left in (old, fresh, other, log):
        left.write_text("half")
    past = time.time() - OLD_S - 1
    for left in (old, other, log):
        os.utime(left, (past, past))
    assert clear_leftovers(tmp_path / "a") == [old, log]
    assert sorted(tmp_path.iterdir()) == [fresh, other]


def test_a_file_is_flushed_where_none_is_that_is_open_for_reading_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on Windows, which flushes no file of a read-only handle and knows no handle of folders."""
    flushed = []

    def flush(handle: int) -> None:
        if fcntl.fcntl(handle, fcntl.F_GETFL) & os.O_ACCMODE == os.O_RDONLY:
            raise OSError(errno.EBADF, "Bad file descriptor")
        flushed.append(handle)

    monkeypatch.setattr(os, "fsync", flush)
    monkeypatch.setattr("ledger.whole_files.IS_POSIX", False)
    fill(tmp_path / "new", "whole")
    assert ((tmp_path / "new").read_text(), len(flushed)) == ("whole", 1)


def test_the_disk_itself_is_flushed_where_that_has_to_be_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on macOS, whose manual of fcntl(2) names F_FULLFSYNC for it."""
    asked = []
    monkeypatch.setattr(sys, "platform", "darwin")
    monkeypatch.setattr(fcntl, "F_FULLFSYNC", 51, raising=False)
    monkeypatch.setattr(fcntl, "fcntl", lambda _handle, what: asked.append(what))
    fill(tmp_path / "new", "whole")
    assert asked == [51, 51]
