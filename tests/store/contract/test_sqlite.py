"""The book in a SQLite file, also when a client without our settings writes to it."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing

import pytest
from sqlalchemy import Table, UniqueConstraint

from ledger.store.form.guards import SENTENCE
from ledger.store.form.tables import METADATA
from tests.keeper import Keeper
from tests.store.contract.book import BookContract
from tests.store.contract.guards import every_row

TABLES = METADATA.tables.values()


class TestSqlite(BookContract):
    unknown_person = "FOREIGN KEY constraint failed"
    no_such_spine_row = "FOREIGN KEY constraint failed"
    wrong_kind = "CHECK constraint failed: ck_note_entry_kind"
    other_ways = (
        'INSERT OR REPLACE INTO "{table}" SELECT * FROM "{table}" LIMIT 1',
        'INSERT OR IGNORE INTO "{table}" SELECT * FROM "{table}" LIMIT 1',
        'UPDATE OR REPLACE "{table}" SET {key} = {key}',
        'INSERT INTO "{table}" SELECT * FROM "{table}" WHERE true LIMIT 1 '
        "ON CONFLICT DO UPDATE SET {key} = excluded.{key}",
    )

    @pytest.fixture
    def keeper(self, sqlite_keeper: Keeper) -> Keeper:
        return sqlite_keeper

    @pytest.fixture
    def walked(self, sqlite_walked: Keeper) -> Keeper:
        return sqlite_walked


@pytest.fixture
def client(sqlite_walked: Keeper) -> Iterator[sqlite3.Connection]:
    """A client with SQLite's own settings: no foreign keys, no recursive triggers."""
    with closing(sqlite3.connect(sqlite_walked.book.where, isolation_level=None)) as connection:
        yield connection


def unique_keys(table: Table) -> list[set[str]]:
    uniques = [c for c in table.constraints if isinstance(c, UniqueConstraint)]
    return [set(key.columns.keys()) for key in (table.primary_key, *uniques)]


def replacing(table: Table, key: set[str]) -> str:
    """Return the statement that would put a row in the place of another that has this key."""
    filled = " AND ".join(f'"{column}" IS NOT NULL' for column in key)
    cells = ", ".join(
        f'"{name}"' if name in key or not column.primary_key else _other(column.type)
        for name, column in table.columns.items()
    )
    names = ", ".join(f'"{name}"' for name in table.columns.keys())  # noqa: SIM118 - names
    return f'REPLACE INTO "{table}" ({names}) SELECT {cells} FROM "{table}" WHERE {filled} LIMIT 1'


def _other(shape: object) -> str:
    return "'another'" if "TEXT" in str(shape) else "9999"


@pytest.mark.parametrize("way", ['UPDATE "{}" SET {} = {}', 'DELETE FROM "{}"'])
def test_any_client_is_refused_a_change(
    way: str, client: sqlite3.Connection, sqlite_walked: Keeper
) -> None:
    before = every_row(sqlite_walked)
    for table in TABLES:
        key = f'"{next(iter(table.columns.keys()))}"'
        with pytest.raises(sqlite3.IntegrityError) as raised:
            client.execute(way.format(table, key, key))
        assert str(raised.value) == SENTENCE, table.name
    assert every_row(sqlite_walked) == before


def test_any_client_is_refused_a_replacement_by_any_key(
    client: sqlite3.Connection, sqlite_walked: Keeper
) -> None:
    """SQLite replaces a row past the triggers on UPDATE and DELETE; a third one sees to that."""
    before = every_row(sqlite_walked)
    for table in TABLES:
        for key in unique_keys(table):
            with pytest.raises(sqlite3.IntegrityError) as raised:
                client.execute(replacing(table, key))
            assert str(raised.value) == SENTENCE, (table.name, key)
    assert every_row(sqlite_walked) == before


def test_no_row_has_a_hidden_number_to_be_replaced_by(client: sqlite3.Connection) -> None:
    """A table either has none or has its key for it, which the guards know."""
    for table in TABLES:
        kind = client.execute("SELECT wr FROM pragma_table_list(?)", (table.name,)).fetchone()
        if kind == (0,):
            cursor = client.execute(f'SELECT rowid, * FROM "{table}"')
            assert [row[0] for row in cursor if row[0] != row[1]] == [], table.name
