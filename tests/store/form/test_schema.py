"""The schema as it is stored: what differs from the kept one is told."""

import sqlite3
from contextlib import closing

import pytest

from ledger.store.form.kept import kept_schema
from ledger.store.form.schema import schema_faults, stored_schema
from tests.keeper import Keeper


def test_a_new_file_has_the_kept_schema(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.reading() as connection:
        assert stored_schema(connection) == kept_schema()


@pytest.mark.parametrize("which", ["sqlite_walked", "postgres_walked"])
def test_a_whole_book_has_no_faults_in_its_schema(
    which: str, request: pytest.FixtureRequest
) -> None:
    keeper: Keeper = request.getfixturevalue(which)
    with keeper.reading() as connection:
        assert list(schema_faults(connection)) == []


@pytest.mark.parametrize(
    ("statement", "faults"),
    [
        ("DROP TRIGGER guard_add_update", ["The book has lost its trigger guard_add_update."]),
        (
            "CREATE TABLE mine (a)",
            ["The book holds the table mine, which it was not made with."],
        ),
        (
            "DROP VIEW verdict; CREATE VIEW verdict AS SELECT 1 AS lot",
            ["The view verdict is not as the book was made with it."],
        ),
        ("DROP INDEX ix_level_lot", ["The book has lost its index ix_level_lot."]),
        (
            "DROP TRIGGER guard_tree_insert; CREATE TRIGGER guard_tree_insert BEFORE INSERT ON "
            "tree WHEN 0 BEGIN SELECT 1; END",
            ["The trigger guard_tree_insert is not as the book was made with it."],
        ),
        ("ANALYZE", []),
    ],
    ids=["lost", "more", "changed", "index", "hollow", "statistics"],
)
def test_each_change_of_a_files_schema_is_told(
    statement: str, faults: list[str], sqlite_keeper: Keeper
) -> None:
    with closing(sqlite3.connect(sqlite_keeper.book.where)) as client:
        client.executescript(statement)
    with sqlite_keeper.reading() as connection:
        assert list(schema_faults(connection)) == faults
