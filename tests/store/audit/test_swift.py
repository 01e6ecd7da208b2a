"""A sound book is told swiftly from any other; what is wrong is left to the slow comparison."""

from collections import deque
from collections.abc import Callable
from concurrent.futures import Future
from pathlib import Path
from typing import Any

import pytest

from ledger.service.evidence.verify import verify
from ledger.store.audit import book as audit
from ledger.store.audit import swift as audit_swift
from ledger.store.audit.beside import beside
from ledger.store.audit.swift import sound_tree
from ledger.store.audit.texts import fitting
from ledger.store.write.recorder import root, size
from tests.keeper import Keeper
from tests.service.evidence.damages import TABLES, damages, tried
from tests.service.hostile import rows_of

WALKED = ("sqlite_walked", "postgres_walked")


@pytest.fixture(params=WALKED)
def walked(request: pytest.FixtureRequest) -> Keeper:
    """A book with a row in every table, on each engine."""
    keeper: Keeper = request.getfixturevalue(request.param)
    return keeper


def tree_of(keeper: Keeper, progress: Callable[[int, int], None] = lambda *_: None) -> bytes | None:
    with keeper.reading() as connection, beside(connection) as second:
        tree = sound_tree(connection, size(connection), progress, second)
    return tree.root() if tree else None


@pytest.mark.parametrize(
    ("kept", "chunk"),
    [*zip(WALKED, (1, 3), strict=True), *((kept, size) for kept in WALKED for size in (10, 8192))],
)
def test_a_book_with_a_row_in_every_table_is_found_sound(
    kept: str, chunk: int, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    """However its entries are parted: one by one in a file, by three where a server takes long."""
    walked: Keeper = request.getfixturevalue(kept)
    monkeypatch.setattr(audit_swift, "CHUNK", chunk)
    with walked.reading() as connection:
        expected = root(connection)
    assert tree_of(walked) == expected


def test_a_sound_book_is_not_compared_row_by_row(
    walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(audit, "chunk_faults", lambda *_: pytest.fail("It was compared slowly."))
    assert verify(walked.book).faults == ()


@pytest.mark.parametrize(("kind", "table"), [("note", "p"), ("formula", "c")])
def test_a_server_joins_a_list_by_its_lines(kind: str, table: str) -> None:
    """What a list holds has an order on a server only where it is asked for."""
    server, file = fitting(kind, "postgresql"), fitting(kind, "sqlite")
    assert f", ',' ORDER BY {table}.line)" in server
    assert "ORDER BY" not in file
    assert ("e.body = format('" in server, "e.body = printf('" in file) == (True, True)


class Second:
    """A second reader that has found something of every part, or of none yet."""

    def __init__(self, *found: bool) -> None:
        self.found = found

    def ask(self, _question: object) -> Future[bool]:
        part = Future[bool]()
        for one in self.found:
            part.set_result(one)
        return part


@pytest.mark.parametrize(
    ("second", "told", "left", "is_fit"),
    [
        (Second(True), 2, 0, True),
        (Second(), 0, 2, True),
        (Second(False), 1, 0, False),
    ],
    ids=["found at once", "not found yet", "found unfit"],
)
def test_parts_that_were_compared_are_told_while_texts_are_hashed_and_others_are_left(
    second: Any,
    told: int,
    left: int,
    is_fit: bool,
    sqlite_walked: Keeper,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(audit_swift, "CHUNK", 40)
    waiting: deque[tuple[int, Future[bool]]] = deque()
    heard: list[int] = []
    with sqlite_walked.reading() as connection:
        last = size(connection)
        grown = audit_swift._grown(
            connection, last, lambda done, _: heard.append(done), second, waiting
        )
    parts = [40, last]
    assert heard == parts[:told]
    assert [done for done, _ in waiting] == parts[:left]
    assert (grown is not None) is is_fit


def test_letters_that_the_text_writes_otherwise_are_read_alike(walked: Keeper) -> None:
    """Quotes, backslashes, and letters of two, three and four bytes."""
    for text in ('say "clear" \\ not cloudy', "crème 5 °C", "橙花油 🍊", "a/b <c> & d'e"):
        walked.do("note", text=text)
    assert tree_of(walked) is not None


def test_entries_beyond_those_that_are_asked_for_are_not_sound(walked: Keeper) -> None:
    with walked.reading() as connection, beside(connection) as second:
        assert sound_tree(connection, size(connection) - 1, lambda *_: None, second) is None


def test_progress_is_told_at_every_chunk(
    sqlite_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(audit_swift, "CHUNK", 16)
    told: list[tuple[int, int]] = []
    tree_of(sqlite_walked, lambda done, total: told.append((done, total)))
    last = len(sqlite_walked.bodies())
    assert told == [(min(done, last), last) for done in range(16, last + 16, 16)]


@pytest.mark.parametrize("table", TABLES)
def test_a_book_with_one_damage_alone_is_never_taken_for_sound(
    table: str, sqlite_walked: Keeper
) -> None:
    """Any one cell, a row lost, one too many, and one that its entry does not say."""
    path = Path(sqlite_walked.book.where)
    entries = len(rows_of(path, "entry"))
    with tried(path, entries, table) as trial:
        assert trial.is_sound()
        unnoticed = [
            damage.told
            for damage in damages(table, rows_of(path, table), entries)
            if trial.is_sound(damage.statement)
        ]
        assert trial.is_sound()
    assert unnoticed == []
    assert tree_of(sqlite_walked) is not None
