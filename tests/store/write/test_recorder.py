"""Appending: numbers without gaps, a root over all texts, a lost node told."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import text

from ledger.domain.entries import Draft, Material, Note, When
from ledger.errors import StorageError
from ledger.service.evidence.verify import verify
from ledger.store.copies.lines import root_of_texts
from ledger.store.engine.connections import Connection, connected
from ledger.store.engine.statements import ask_one
from ledger.store.form.create import create_book
from ledger.store.read.end import edge_of
from ledger.store.write import recorder
from tests.keeper import Keeper


def test_an_entry_has_the_next_number_and_the_root_is_over_its_text_too(
    sqlite_keeper: Keeper,
) -> None:
    draft = Draft(Note("Some words."), None, When(sqlite_keeper.clock(), 0), "AB")
    with sqlite_keeper.book.writing() as connection:
        before = recorder.size(connection)
        entry = recorder.append(connection, draft, ((), None), sqlite_keeper.clock())
        assert (entry.seq, entry.stands_for) == (before + 1, before + 1)
        assert recorder.size(connection) == before + 1
        assert recorder.root(connection) == root_of_texts(connection)
    assert sqlite_keeper.entry(entry.seq) == entry


def test_a_book_that_has_no_entry_yet_has_none(tmp_path: Path) -> None:
    where, found = str(tmp_path / "new.db"), list[int]()
    with connected(where) as engine:
        create_book(engine, where, lambda connection: found.append(recorder.size(connection)))
    assert found == [0]


def test_a_lost_leaf_is_told_with_the_entries_it_stood_for(sqlite_keeper: Keeper) -> None:
    with closing(sqlite3.connect(sqlite_keeper.book.where)) as client, client:
        client.execute("DROP TRIGGER guard_tree_delete")
        client.execute("DELETE FROM tree WHERE height = 2 AND place = 1")
    with sqlite_keeper.reading() as connection, pytest.raises(StorageError) as raised:
        recorder.node(connection, 2, 1)
    assert raised.value.problems == (
        (
            "The book has lost its hash over entries 5 to 8.",
            "Keep this book as it is. Run pottle verify to see what else does not fit.",
        ),
    )


def test_a_name_has_its_first_entry_alone_though_one_act_says_it_twice(
    sqlite_keeper: Keeper,
) -> None:
    said = next(entry.facts for entry in sqlite_keeper.entries() if entry.kind == "material")
    assert isinstance(said, Material)
    now = sqlite_keeper.clock()
    draft = Draft(replace(said, code="new"), None, When(now, 0), "AB")
    with sqlite_keeper.book.writing() as connection:
        first, _ = (recorder.append(connection, draft, ((), None), now) for _ in range(2))
        query = text("SELECT seq FROM material_key WHERE code = 'new'")
        assert connection.execute(query).scalars().all() == [first.seq]
    assert verify(sqlite_keeper.book).faults == ()


def test_of_an_entry_about_a_lot_its_number_is_kept_however_often_it_is_named(
    sqlite_keeper: Keeper,
) -> None:
    code = sqlite_keeper.opens("receive", material="water", amount="1L")
    draft = Draft(Note("Some words."), code, When(sqlite_keeper.clock(), 0), "AB")
    with sqlite_keeper.book.writing() as connection:
        numbers = [
            recorder.append(connection, draft, ((), None), sqlite_keeper.clock()).seq
            for _ in range(2)
        ]
        about = "SELECT lot FROM entry WHERE seq = :seq"
        assert [ask_one(connection, about, seq=seq) for seq in numbers] == [9, 9]


def test_a_node_of_no_height_is_the_leaf_of_the_entry_that_stands_there(
    sqlite_keeper: Keeper,
) -> None:
    with sqlite_keeper.reading() as connection:
        leaves = connection.execute(text("SELECT leaf FROM entry ORDER BY seq")).scalars().all()
        told = [recorder.node(connection, 0, place) for place in range(len(leaves))]
        assert told == leaves
        with pytest.raises(StorageError) as raised:
            recorder.node(connection, 0, len(leaves))
    assert raised.value.problems[0][0] == (
        f"The book has lost its hash over entries {len(leaves) + 1} to {len(leaves) + 1}."
    )


def test_a_correction_stands_for_the_first_of_its_chain(sqlite_keeper: Keeper) -> None:
    now = sqlite_keeper.clock()
    with sqlite_keeper.book.writing() as connection:
        numbers: list[tuple[int, int]] = []
        corrects = None
        for _ in range(3):
            draft = Draft(Note("Words."), None, When(now, 0), "AB", corrects=corrects)
            made = recorder.append(connection, draft, ((), None), now)
            numbers.append((made.seq, made.stands_for))
            corrects = made.seq
    first = numbers[0][0]
    assert numbers == [(first, first), (first + 1, first), (first + 2, first)]


def test_on_what_nodes_an_entry_stands_is_asked_in_one_statement_for_the_whole_act(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of eight entries; the sixteenth completes four nodes, and stands on one of three levels."""
    asked: list[int] = []

    def edge(connection: Connection, last: int) -> dict[tuple[int, int], bytes]:
        asked.append(last)
        return edge_of(connection, last)

    monkeypatch.setattr(recorder, "node", None)
    monkeypatch.setattr(recorder, "edge_of", edge)
    draft = Draft(Note("Some words."), None, When(sqlite_keeper.clock(), 0), "AB")
    with sqlite_keeper.book.writing() as connection:
        assert recorder.size(connection) == 8
        for _ in range(8):
            recorder.append(connection, draft, ((), None), sqlite_keeper.clock())
        assert asked == [8]
        monkeypatch.undo()
        assert recorder.root(connection) == root_of_texts(connection)
