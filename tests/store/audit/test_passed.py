"""In a damaged book only the entries around the damage are compared row by row."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import Connection

from ledger.service.evidence.verify import verify
from ledger.store.audit import book as audit
from ledger.store.audit.passed import passes
from ledger.store.audit.rows import Fault, Reader, chunk_faults
from ledger.store.audit.swift import rows_fit
from tests.keeper import Keeper
from tests.service.hostile import rows_of, run

CHANGED = "UPDATE note SET text = 'Other' WHERE seq = (SELECT MAX(seq) FROM note)"


@pytest.fixture
def compared(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """The entries that are compared row by row, ten at a time being looked at."""
    seen: list[int] = []

    def comparing(connection: Connection, reader: Reader, first: int, last: int) -> Iterator[Fault]:
        seen.extend(range(first, last + 1))
        return chunk_faults(connection, reader, first, last)

    monkeypatch.setattr(audit, "CHUNK", 10)
    monkeypatch.setattr(audit, "chunk_faults", comparing)
    return seen


def test_only_entries_around_a_changed_row_and_those_that_name_things_are_compared(
    sqlite_walked: Keeper, compared: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    where = Path(sqlite_walked.book.where)
    run(where, CHANGED)
    found = verify(sqlite_walked.book)
    (fault,) = found.faults
    keys = [*rows_of(where, "person_key"), *rows_of(where, "material_key")]
    tens = {(seq - 1) // 10 for seq in compared}
    assert fault.what == f"Entry {fault.seq} says otherwise than the table note in: text."
    assert tens == {
        (seq - 1) // 10 for seq in (*(int(str(row["seq"])) for row in keys), fault.seq or 0)
    }
    assert len(compared) < found.entries / 2
    monkeypatch.setattr(audit, "passes", lambda *_: False)
    assert verify(sqlite_walked.book) == found


NOTE = "(SELECT MAX(seq) FROM note)"


@pytest.mark.parametrize(
    "wrong",
    [
        CHANGED,
        f"INSERT INTO person_key (initials, seq) VALUES ('ZZ', {NOTE})",
        f"INSERT INTO start_factors (seq, line, name, planned) VALUES ({NOTE}, 1, 'heat', 'low')",
        f"INSERT INTO level (seq, lot, amount) VALUES ({NOTE}, (SELECT MIN(id) FROM lot), 5)",
        f"INSERT INTO lot (id, code, lot_type, measure) VALUES ({NOTE}, 'XX-001-7', 'made', 'uL')",
        f"UPDATE entry SET reason = 'so' WHERE seq = {NOTE}",
        f"UPDATE entry SET leaf = zeroblob(32) WHERE seq = {NOTE}",
        f"DELETE FROM note WHERE seq = {NOTE}",
        f"INSERT INTO material_key (code, seq) VALUES ('zinc', {NOTE})",
    ],
)
def test_an_entry_with_a_row_that_does_not_fit_is_not_passed_over(
    wrong: str, sqlite_walked: Keeper
) -> None:
    seq = max(entry.seq for entry in sqlite_walked.entries() if entry.kind == "note")
    with sqlite_walked.reading() as connection:
        assert passes(connection, Reader(), seq, seq)
    run(Path(sqlite_walked.book.where), wrong)
    with sqlite_walked.reading() as connection:
        assert not passes(connection, Reader(), seq, seq)


def test_on_a_server_no_entry_is_passed_over(postgres_keeper: Keeper) -> None:
    with postgres_keeper.reading() as connection:
        assert not passes(connection, Reader(), 1, 8)


def test_a_cell_of_another_type_in_a_table_that_lets_it_in_is_not_passed_over(
    sqlite_walked: Keeper,
) -> None:
    """A hash that is kept as text has the same bytes, so only its type tells that it was changed.

    A table is strict as it is made; whoever changes that needs no more than to write to the file.
    """
    seq = max(entry.seq for entry in sqlite_walked.entries() if entry.kind == "note")
    where = Path(sqlite_walked.book.where)
    run(
        where,
        "PRAGMA writable_schema = ON",
        "UPDATE sqlite_master SET sql = replace(sql, 'STRICT', '') WHERE name = 'entry'",
    )
    run(where, f"UPDATE entry SET leaf = CAST(leaf AS TEXT) WHERE seq = {seq}")
    with sqlite_walked.reading() as connection:
        assert rows_fit(connection, seq, seq)
        assert not passes(connection, Reader(), seq, seq)
