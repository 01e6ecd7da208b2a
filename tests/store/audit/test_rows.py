"""The rows of every table are those that the texts of the entries say, and no others."""

import sqlite3
from collections import defaultdict
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy.exc import DatabaseError

from ledger.domain.entries import Note
from ledger.domain.entries.plain import entry_text
from ledger.domain.evidence.merkle import leaf_hash
from ledger.store.audit import rows
from ledger.store.audit.rows import Fault, Reader, chunk_faults, stray_faults, taken_up
from ledger.store.form.tables import LOT, MATERIAL_KEY, METADATA, PERSON_KEY
from tests.domain.builders import entry, make
from tests.keeper import Keeper
from tests.service.hostile import run


def faults_in(keeper: Keeper, reader: Reader | None = None, first: int = 1) -> list[Fault]:
    with keeper.reading() as connection:
        read = reader or Reader()
        return list(chunk_faults(connection, read, first, len(keeper.bodies())))


def test_a_changed_row_is_told_with_its_entry_and_a_sound_book_has_none(
    sqlite_keeper: Keeper,
) -> None:
    assert faults_in(sqlite_keeper) == []
    run(Path(sqlite_keeper.book.where), "UPDATE person SET name = 'Other' WHERE seq = 2")
    assert faults_in(sqlite_keeper) == [
        Fault(2, "Entry 2 says otherwise than the table person in: name.")
    ]


def test_a_text_that_does_not_fit_its_hash_is_told_once(sqlite_keeper: Keeper) -> None:
    run(Path(sqlite_keeper.book.where), "UPDATE entry SET leaf = zeroblob(32) WHERE seq = 2")
    fault = Fault(2, "The text of entry 2 does not fit its hash.")
    assert faults_in(sqlite_keeper) == [fault]


def test_a_reader_begins_before_the_first_entry() -> None:
    reader = Reader()
    assert (reader.last, reader.frontier.size, reader.nodes, reader.unfit) == (0, 0, {}, set())


def test_a_reading_that_is_taken_up_midway_knows_what_was_opened_before(
    sqlite_keeper: Keeper,
) -> None:
    lot = sqlite_keeper.opens("receive", material="water", amount="1L")
    sqlite_keeper.do("note", lot=lot, text="From the tap.")
    with sqlite_keeper.reading() as connection:
        reader = taken_up(connection, 9)
    assert faults_in(sqlite_keeper, reader, first=10) == []
    assert faults_in(sqlite_keeper, Reader(), first=10) != []


def test_a_row_beyond_the_last_entry_belongs_to_none(sqlite_keeper: Keeper) -> None:
    stray = "INSERT INTO level (seq, lot, amount) VALUES (99, 1, 5)"
    run(Path(sqlite_keeper.book.where), stray)
    with sqlite_keeper.reading() as connection:
        assert list(stray_faults(connection, 8)) == [
            Fault(
                99,
                "The table level has rows that belong to none of the 8 entries; the first is "
                "numbered 99.",
            )
        ]


def test_a_sound_book_with_a_row_in_every_table_has_no_fault(sqlite_walked: Keeper) -> None:
    """Also where what opened a lot was corrected, and the lot is spoken of after that."""
    opener = next(each for each in sqlite_walked.entries() if each.kind == "receipt")
    told = {"entry": str(opener.seq), "changes": "supplier_lot=C7732", "because": "misread"}
    sqlite_walked.do("correct", **told)
    sqlite_walked.do("note", lot=opener.draft.lot, text="Smells clean.")
    assert faults_in(sqlite_walked) == []


@pytest.mark.parametrize("damaged", [1, 5, 8])
def test_rows_that_cannot_be_read_are_told_of_their_entry_and_all_others_are_read(
    damaged: int, sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    read = rows._stored

    def stored(connection: Any, table: Any, first: int, last: int) -> Any:
        if first <= damaged <= last:
            raise DatabaseError("", None, sqlite3.DatabaseError("database disk image is malformed"))
        return read(connection, table, first, last)

    monkeypatch.setattr(rows, "_stored", stored)
    assert faults_in(sqlite_keeper) == [
        Fault(
            damaged,
            f"The rows of entry {damaged} cannot be read: database disk image is malformed.",
        )
    ]


def test_an_entry_that_is_not_there_has_a_leaf_in_its_place_and_fits_nothing() -> None:
    reader = Reader()
    reader.miss(1)
    reader.grow(b"\x07" * 32)
    assert reader.unfit == {1}
    assert reader.frontier.size == 2
    assert [*reader.nodes] == [(1, 0)]


def entry_fault(body: object, leaf: bytes | None = None, seq: int = 9) -> tuple[str, Reader]:
    """Return what is wrong with the row of an entry, and who read it."""
    reader = Reader()
    text = body if isinstance(body, str) else ""
    cells: list[Any] = [None] * len(METADATA.tables["entry"].columns)
    cells[rows._BODY], cells[rows._LEAF] = body, leaf or leaf_hash(text.encode())
    expected: Any = defaultdict(dict)
    return rows._entry_fault(reader, tuple(cells), seq, expected), reader


def test_why_an_entry_cannot_be_read_is_told_and_a_leaf_stands_in_its_place() -> None:
    text = entry_text(entry(make(Note), 9, lot=None))
    about = entry_text(entry(make(Note), 9, lot="E-1"))
    told = {
        "sound": entry_fault(text),
        "another hash": entry_fault(text, b"x" * 32),
        "of another number": entry_fault(text, seq=8),
        "no text": entry_fault(b"no text"),
        "no entry": entry_fault("{}"),
        "of no lot": entry_fault(about),
    }
    assert {why: fault for why, (fault, _) in told.items()} == {
        "sound": "",
        "another hash": "",
        "of another number": "The text of entry 8 is not what the book writes.",
        "no text": "The text of entry 9 is no text.",
        "no entry": "The text of entry 9 is not what the book writes.",
        "of no lot": "Entry 9 speaks of the lot E-1, which no entry before it opened.",
    }
    unfit = {why for why, (_, reader) in told.items() if reader.unfit}
    assert unfit == {"another hash", "no text"}
    assert {reader.frontier.size for _, reader in told.values()} == {1}
    reader = Reader()
    assert rows._entry_fault(reader, None, 9, {}) == "Entry 9 is missing."
    assert (reader.unfit, reader.frontier.size) == ({9}, 1)


def test_a_row_that_differs_is_told_with_its_columns_and_one_that_is_lost_or_too_many() -> None:
    table = METADATA.tables["level"]
    told = [
        rows._difference(table, 9, have, want)
        for have, want in (((9, 1, 5), (9, 2, 6)), (None, (9, 1, 5)), ((9, 1, 5), None))
    ]
    assert told == [
        "Entry 9 says otherwise than the table level in: lot, amount.",
        "Entry 9 has lost a row of the table level.",
        "The table level has a row for entry 9 that the entry does not say.",
    ]


def test_what_an_unreadable_entry_opened_is_taken_from_the_tables() -> None:
    reader = Reader()
    opened = (("O-1", 9), ("O-2", 8))
    stored: Any = {
        LOT: {(seq,): (seq, code, "received", "uL") for code, seq in opened},
        PERSON_KEY: {(key,): (key, seq) for key, seq in (("CD", 9), ("EF", 8))},
        MATERIAL_KEY: {(key,): (key, seq) for key, seq in (("oil", 9), ("rum", 8))},
    }
    reader.trust(9, stored)
    assert reader._lots == {"O-1": 9}
    assert reader._keys == {("person", "CD"), ("material", "oil")}
