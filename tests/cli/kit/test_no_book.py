"""A book that is missing, is none or cannot be opened is said in words, and left as it is.

Permissions do not bind every user who runs tests, so a place that cannot be written is shown by a
path below a plain file, and by a folder where a file should be.
"""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.cli.shell import Shell


def _random_bytes(book: Path) -> None:
    book.write_bytes(bytes(range(7, 250)) * 40)


def _empty(book: Path) -> None:
    book.write_bytes(b"")


def _other_database(book: Path) -> None:
    with closing(sqlite3.connect(book)) as connection, connection:
        connection.execute("CREATE TABLE recipe (name TEXT)")


NO_BOOK = "The file {} is not a book of pottle."
ELSEWHERE = "Name the right file with --ledger, or make a book elsewhere with: pottle init"


@pytest.mark.parametrize("spoil", [_random_bytes, _empty, _other_database])
@pytest.mark.parametrize("args", [("stock",), ("note", "-", "x")], ids=["reading", "writing"])
def test_a_file_that_is_no_book_is_left_as_it_is(
    tmp_path: Path, spoil: Callable[[Path], None], args: tuple[str, ...]
) -> None:
    book = tmp_path / "other.db"
    spoil(book)
    before = book.read_bytes()
    answer = Shell(book).run(*args)
    assert answer.exit_code == 5
    assert answer.complaints == [NO_BOOK.format(book), f"  {ELSEWHERE}"]
    assert book.read_bytes() == before


def test_a_missing_book_is_not_made_by_the_way(tmp_path: Path) -> None:
    book = tmp_path / "none.db"
    answer = Shell(book).run("stock")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"There is no book at {book}.",
        '  Make one with: pottle init --house "NAME" --currency EUR',
    ]
    assert not book.exists()


def test_a_book_of_a_newer_version_is_left_to_a_newer_pottle(shell: Shell) -> None:
    with closing(sqlite3.connect(shell.book)) as connection:
        now = int(connection.execute("PRAGMA user_version").fetchone()[0])
        connection.execute(f"PRAGMA user_version = {now + 1}")
    answer = shell.run("note", "-", "x")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"The book {shell.book} is of version {now + 1}; this pottle knows versions up to {now}.",
        "  Use the newer pottle that wrote it. Nothing was changed.",
    ]
    assert shell.entries() == 38


def test_a_place_that_cannot_be_written_is_said_with_its_cause(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    book = tmp_path / "file" / "pottle.db"
    answer = Shell(book).run("init", "--house", "Wren & Co", "--currency", "EUR")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"The book {book} could not be made: Not a directory.",
        "  Choose a folder that exists and that you may write in.",
    ]


def test_a_folder_is_no_book(tmp_path: Path) -> None:
    answer = Shell(tmp_path).run("stock")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"{tmp_path} is a folder, and a book is a file.",
        "  Name the file in it with --ledger.",
    ]


def test_a_file_that_was_cut_short_is_to_be_taken_back_from_a_copy(shell: Shell) -> None:
    with shell.book.open("r+b") as file:
        file.truncate(5000)
    answer = shell.run("stock")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"The book {shell.book} could not be opened: database disk image is malformed.",
        "  The file is damaged. Keep it as it is, and take back the last copy with: pottle restore "
        "FILE --to PATH",
    ]


def test_a_new_book_is_not_made_over_an_old_one_nor_left_half_made(
    shell: Shell, tmp_path: Path
) -> None:
    over = shell.run("init", "--house", "Wren & Co", "--currency", "EUR")
    assert over.exit_code == 5
    assert over.complaints == [
        f"There is a file at {shell.book} already; it was left as it is.",
        "  Open that book, or give another place with --ledger.",
    ]
    half = Shell(tmp_path / "half.db")
    assert half.run("init", "--house", "Wren & Co", "--currency", "money").exit_code == 2
    assert not half.book.exists()
