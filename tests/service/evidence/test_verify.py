"""Verifying finds every row changed past the guards, and names the entry it belongs to."""

import shutil
import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy.exc import DatabaseError, OperationalError

from ledger.errors import StorageError
from ledger.service.evidence.verify import verify
from ledger.store.audit import book as audit_book
from ledger.store.form.tables import METADATA
from tests.conftest import Server, opened
from tests.keeper import LATER, Keeper, SetClock
from tests.service.evidence.damages import (
    ALONE,
    TABLES,
    books_of,
    damages,
    keys_of,
    literal,
    lost,
    other,
    too_many,
    unsaid,
)
from tests.service.hostile import (
    Value,
    audited,
    change_cell,
    entry_of,
    first_named,
    found_in,
    number,
    row_of_kind,
    rows_of,
    run,
    write_text,
)

CELLS = [
    pytest.param(table, column.name, id=f"{table}.{column.name}")
    for table in ALONE
    for column in METADATA.tables[table].columns
]


def test_nothing_is_found_in_a_book_as_it_was_kept(path: Path) -> None:
    audit = audited(path)
    assert audit.faults == ()
    assert audit.entries == len(rows_of(path, "entry"))
    assert all(rows_of(path, table) for table in METADATA.tables)


def test_a_hostile_hand_that_changes_nothing_leaves_nothing_to_find(path: Path) -> None:
    run(path)
    assert found_in(path) == []


def test_progress_is_told_to_the_end(sqlite_walked: Keeper) -> None:
    told: list[tuple[int, int]] = []
    audit = verify(sqlite_walked.book, lambda done, total: told.append((done, total)))
    assert told[-1] == (audit.entries, audit.entries)


def test_of_a_damaged_book_too_progress_is_told_to_the_end(
    sqlite_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    last = len(sqlite_walked.bodies())
    run(Path(sqlite_walked.book.where), f"UPDATE entry SET leaf = zeroblob(32) WHERE seq = {last}")
    monkeypatch.setattr(audit_book, "CHUNK", 20)
    told: list[tuple[int, int]] = []
    verify(sqlite_walked.book, progress=lambda done, total: told.append((done, total)))
    assert told[-4:] == [(20, last), (40, last), (60, last), (last, last)]


@pytest.mark.parametrize(("table", "column"), CELLS)
def test_a_changed_cell_is_found_at_its_entry(table: str, column: str, path: Path) -> None:
    rows = rows_of(path, table)
    row = next((row for row in rows if row[column] is not None), rows[0])
    change_cell(path, table, row, column, other(table, column, rows, row[column]))
    assert first_named(audited(path).faults) == entry_of(table, row)


@pytest.mark.parametrize("table", ALONE)
def test_an_emptied_and_a_filled_cell_are_found_at_their_entries(table: str, path: Path) -> None:
    rows, wanted, statements = rows_of(path, table), set(), []
    for name in (column.name for column in METADATA.tables[table].columns if column.nullable):
        empty = next((row for row in rows if row[name] is None), None)
        full = next((row for row in reversed(rows) if row[name] is not None), None)
        for row, now in ((empty, other(table, name, rows, None)), (full, None)):
            if row:
                statements.append(
                    f'UPDATE "{table}" SET "{name}" = {literal(now)} WHERE {keys_of(table, row)}'
                )
                wanted.add(entry_of(table, row))
    run(path, *statements, table=table)
    assert wanted <= {fault.seq for fault in audited(path).faults}


@pytest.mark.parametrize("table", ALONE)
def test_a_lost_row_is_found_at_its_entry(table: str, path: Path) -> None:
    damage = lost(table, rows_of(path, table))
    run(path, damage.statement, table=table)
    assert first_named(audited(path).faults) == damage.seq


@pytest.mark.parametrize("table", ALONE)
def test_a_row_too_many_is_found(table: str, path: Path) -> None:
    row, last = rows_of(path, table)[0], len(rows_of(path, "entry"))
    damage = too_many(table, row, last)
    run(path, damage.statement, table=table)
    if table == "tree":
        at = f"({number(row['height']) + 1000}, {number(row['place']) + 1000})"
        assert found_in(path) == [f"The tree has a node {at} that no entries complete."]
        return
    assert first_named(audited(path).faults) == damage.seq
    assert damage.told in found_in(path)


@pytest.mark.parametrize("table", ["lot", "details"])
def test_a_row_that_its_entry_does_not_say_is_found_at_that_entry(table: str, path: Path) -> None:
    damage = unsaid(table, rows_of(path, table))
    run(path, damage.statement)
    assert damage.told in found_in(path)


def test_each_of_many_damages_is_told_by_a_sentence_of_its_own(
    whole: Path, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(audit_book, "MOST_FAULTS", 10_000)
    entries = len(rows_of(whole, "entry"))
    every = [one for table in TABLES for one in damages(table, rows_of(whole, table), entries)]
    for book in books_of(every):
        shutil.copyfile(whole, path)
        # Rows are copied before others are changed.
        run(path, *sorted((one.statement for one in book), key=lambda said: said[:1] != "I"))
        told = found_in(path)
        assert [one.told for one in book if one.told not in told] == []


@pytest.mark.parametrize(
    "columns", [("body",), ("body", "leaf"), ("seq",)], ids=["texts", "texts and hashes", "numbers"]
)
def test_two_entries_that_changed_places_are_found(columns: tuple[str, ...], path: Path) -> None:
    rows = {row["seq"]: row for row in rows_of(path, "entry")}
    for column in columns:
        _swap(path, column, rows[20][column], rows[21][column])
    audit = audited(path)
    assert first_named(audit.faults) == 20
    assert 21 in {fault.seq for fault in audit.faults}


def _swap(path: Path, column: str, first: Value, second: Value) -> None:
    asides: dict[str, Value] = {"seq": 10**6, "leaf": b"aside", "body": "aside"}
    aside = asides[column]
    for was, now in ((first, aside), (second, first), (aside, second)):
        change_cell(path, "entry", {column: was}, column, now)


def test_renumbered_entries_are_found_from_the_first(path: Path) -> None:
    run(
        path,
        "UPDATE entry SET seq = -seq - 1 WHERE seq >= 30",
        "UPDATE entry SET seq = -seq WHERE seq < 0",
    )
    audit = audited(path)
    assert "Entry 30 is missing." in [fault.what for fault in audit.faults]
    assert first_named(audit.faults) == 30


def test_a_text_rewritten_with_its_hash_and_rows_is_found_by_the_tree(path: Path) -> None:
    row = row_of_kind(path, "complaint")
    seq, body = number(row["seq"]), str(row["body"])
    other_body = body.replace('"symptom":"cloudy"', '"symptom":"bright"')
    assert other_body != body
    write_text(path, seq, other_body.encode(), hashed=True)
    change_cell(path, "complaint", {"seq": seq}, "symptom", "bright")
    first = seq - 1 + seq % 2
    assert found_in(path) == [
        f"The tree's node over entries {first} to {first + 1} does not fit them."
    ]


def test_no_more_than_fifty_faults_are_told(path: Path) -> None:
    run(path, "UPDATE entry SET leaf = zeroblob(32)")
    assert len(audited(path).faults) == 50


def test_a_changed_cell_is_found_on_a_server_too(
    server: Server, server_walked_template: str
) -> None:
    where = server.where(server.new_database(server_walked_template))
    with opened(where, SetClock(LATER)) as keeper:
        assert verify(keeper.book).faults == ()
        with keeper.book.writing() as connection:
            for statement in (
                "ALTER TABLE complaint DISABLE TRIGGER USER",
                "UPDATE complaint SET symptom = 'bright'",
                "ALTER TABLE complaint ENABLE TRIGGER USER",
            ):
                connection.exec_driver_sql(statement)
        seq = next(entry.seq for entry in keeper.entries() if entry.kind == "complaint")
        assert [(fault.seq, fault.what) for fault in verify(keeper.book).faults] == [
            (seq, f"Entry {seq} says otherwise than the table complaint in: symptom.")
        ]


@pytest.mark.parametrize("part", ["form_faults", "_is_sound", "_row_faults"])
def test_a_disk_that_fails_is_no_finding_of_a_book(
    part: str, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The book is of its form, so what cannot be read tells of the disk; it is said as such."""

    def fails(*_: object) -> Iterator[str]:
        raise OperationalError("SELECT 1", {}, sqlite3.OperationalError("disk I/O error"))

    if part == "_row_faults":
        run(path, "UPDATE complaint SET symptom = 'bright'", table="complaint")
    monkeypatch.setattr(audit_book, part, fails)
    with pytest.raises(StorageError) as raised:
        audited(path)
    assert raised.value.problems == (
        (
            "The book could not be read or written: disk I/O error.",
            "Check the disk, the permissions and that nothing else holds the book.",
        ),
    )


@pytest.mark.parametrize(
    ("part", "told"),
    [
        ("_is_sound", "The book cannot be examined to its end: malformed."),
        ("_row_faults", "The tables cannot be read to their end: malformed."),
    ],
)
def test_bytes_that_cannot_be_read_are_a_finding_of_the_book(
    part: str, told: str, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> Iterator[str]:
        raise DatabaseError("SELECT 1", {}, sqlite3.DatabaseError("malformed"))

    if part == "_row_faults":
        run(path, "UPDATE complaint SET symptom = 'bright'", table="complaint")
    monkeypatch.setattr(audit_book, part, fails)
    assert found_in(path)[:1] == [told]
