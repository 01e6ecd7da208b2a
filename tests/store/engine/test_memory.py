"""What never changes of entries is asked once, as long as the book is the same."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from shutil import copyfile
from typing import Any

import pytest

from ledger.domain.entries import Note
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import How
from ledger.store.engine.connections import Connection
from ledger.store.engine.memory import lasting
from ledger.store.engine.statements import ask_for
from tests.keeper import Keeper

_KINDS = "SELECT e.seq, e.kind FROM {wanted} w CROSS JOIN entry e WHERE e.seq = w.lot"


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[list[int]]:
    """The entries that the book is asked for, question by question."""
    heard: list[list[int]] = []

    def hear(connection: Connection, statement: str, wanted: Sequence[int]) -> list[Any]:
        heard.append(list(wanted))
        return ask_for(connection, statement, wanted)

    monkeypatch.setattr("ledger.store.engine.memory.ask_for", hear)
    return heard


def kinds(connection: Connection, *entries: int) -> list[str]:
    """Return of what kind entries are."""
    return [kind for _, kind in lasting(connection, _KINDS, entries).values()]


def test_what_is_remembered_is_asked_no_more(sqlite_keeper: Keeper, asked: list[list[int]]) -> None:
    for _ in range(2):
        with sqlite_keeper.reading() as connection:
            assert kinds(connection, 2, 1) == ["person", "house"]
    sqlite_keeper.do("note", text="Here.")
    with sqlite_keeper.reading() as connection:
        assert kinds(connection, 1, 3, 2) == ["house", "material", "person"]
        assert kinds(connection, 1, 2) == ["house", "person"]
    assert asked == [[2, 1], [3]]


def test_what_was_written_and_did_not_stand_is_not_remembered(sqlite_keeper: Keeper) -> None:
    with suppress(ZeroDivisionError), at_desk(sqlite_keeper.book, How(sqlite_keeper.by)) as desk:
        written = desk.record(Note(text="Torn out.")).seq
        assert kinds(desk.connection, 1, written) == ["house", "note"]
        raise ZeroDivisionError
    assert sqlite_keeper.do("party", name="The Pier Kiosk", phone="1").seq == written
    with sqlite_keeper.reading() as connection:
        assert kinds(connection, 1, written) == ["house", "party"]


def test_of_another_book_in_the_place_of_one_nothing_is_remembered(
    sqlite_keeper: Keeper, tmp_path: Path, asked: list[list[int]]
) -> None:
    own, other = Path(sqlite_keeper.book.where), tmp_path / "other.db"
    copyfile(own, other)
    first = sqlite_keeper.do("note", text="One book.").seq
    with sqlite_keeper.reading() as connection:
        assert kinds(connection, 1, first) == ["house", "note"]
    sqlite_keeper.book.close()
    copyfile(other, own)
    sqlite_keeper.do("party", name="The Pier Kiosk", phone="1")
    with sqlite_keeper.reading() as connection:
        assert kinds(connection, 1, first) == ["house", "party"]
    assert asked == [[1, first], [1, first]]
