"""A book as lines of text, from which anybody can reckon its root."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from ledger.domain.entries.canonical import read_canonical
from ledger.domain.evidence.seals import Seal
from ledger.errors import StorageError
from ledger.service.evidence.seal import seal
from ledger.store.copies import lines
from ledger.store.copies.lines import FORMAT, copy_file, head_line, root_of_texts, text_lines
from tests.domain.evidence.rfc6962 import leaf, pair
from tests.keeper import Keeper, silent


def test_the_first_line_says_what_follows() -> None:
    assert read_canonical(head_line(Seal("Wren & Co", 9, "ab" * 32))) == {
        "format": FORMAT,
        "house": "Wren & Co",
        "entries": 9,
        "root": "ab" * 32,
    }


def test_the_texts_of_the_entries_follow_then_the_details_and_progress_is_told(
    sqlite_keeper: Keeper,
) -> None:
    told: list[tuple[int, int]] = []
    own = seal(sqlite_keeper.book)
    with sqlite_keeper.reading() as connection:
        head, *rest = text_lines(connection, own, lambda done, total: told.append((done, total)))
    assert head == head_line(own)
    anna = f'{{"details":{{"name":"Anna Bell"}},"entry":2,"salt":"{"0" * 64}"}}'
    assert rest == [*(body for _, body in sqlite_keeper.bodies()), anna]
    assert told == [(own.entries, own.entries)]


def test_the_root_of_the_texts_is_that_of_the_definition(sqlite_keeper: Keeper) -> None:
    """RFC 6962, section 2.1: of eight leaves, a tree of pairs of pairs of pairs."""
    nodes = [leaf(body.encode()) for _, body in sqlite_keeper.bodies()]
    assert len(nodes) == 8
    while len(nodes) > 1:
        nodes = [pair(nodes[place], nodes[place + 1]) for place in range(0, len(nodes), 2)]
    with sqlite_keeper.reading() as connection:
        assert root_of_texts(connection) == nodes[0]


def test_a_copy_of_the_file_needs_no_file_beside_it(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    to = tmp_path / "copy.db"
    with sqlite_keeper.reading() as connection:
        copy_file(connection, to, silent)
    with closing(sqlite3.connect(to)) as client:
        assert client.execute("PRAGMA journal_mode").fetchone() == ("delete",)
        assert client.execute("SELECT count(*) FROM entry").fetchone() == (8,)
    assert [path.name for path in tmp_path.glob("copy.db*")] == ["copy.db"]


def test_a_copy_that_has_no_place_says_why_and_what_to_do(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """A folder is no file that could be written; SQLite, "Result Codes", SQLITE_CANTOPEN."""
    with sqlite_keeper.reading() as connection, pytest.raises(StorageError) as raised:
        copy_file(connection, tmp_path, silent)
    assert raised.value.problems == (
        (
            "The copy could not be written: unable to open database file.",
            "Choose a place with room enough.",
        ),
    )


def test_of_a_copy_page_by_page_it_is_told_how_much_of_how_much_is_done(
    sqlite_keeper: Keeper, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(lines, "PAGES", 40)
    told: list[tuple[int, int]] = []
    with sqlite_keeper.reading() as connection:
        (pages,) = connection.exec_driver_sql("PRAGMA page_count").one()
        copy_file(connection, tmp_path / "copy.db", lambda *words: told.append(words))
    assert pages > 40
    assert told == [(min(done, pages), pages) for done in range(40, pages + 40, 40)]


def test_how_often_progress_is_told(sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch) -> None:
    assert lines.PAGES == 1000
    monkeypatch.setattr(lines, "PAGES", 3)
    told: list[int] = []
    with sqlite_keeper.reading() as connection:
        own = seal(sqlite_keeper.book)
        list(text_lines(connection, own, lambda done, _: told.append(done)))
    assert told == [3, 6, 8]
