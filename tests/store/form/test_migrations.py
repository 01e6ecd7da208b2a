"""A book is made by its migrations, is what the tables say, and an old one is still read."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Engine, inspect

from ledger.domain.entries.plain import entry_text, read_entry
from ledger.service.evidence.verify import verify
from ledger.store.engine.connections import SCHEMA_VERSION, connected, writing
from ledger.store.form.create import migrate, script
from ledger.store.form.kept import kept_schema
from ledger.store.form.schema import schema_faults, stored_schema
from ledger.store.form.tables import METADATA
from ledger.store.write import recorder
from tests.conftest import Server, opened
from tests.keeper import Keeper, SetClock
from tests.old_books import FOLDER, OLD_BOOKS, OldBook

PIECE = re.compile(r"\n|, (?=[a-z_]+ (?:INTEGER|TEXT)\b)| (?=CONSTRAINT ck_)")
VIEWS = {"in_force", "movement", "last_level", "on_hand", "verdict", "lot_status"}


@pytest.fixture(params=["sqlite", "postgres"])
def engine(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Engine]:
    """A database with nothing in it."""
    where = str(tmp_path / "book.db")
    if request.param == "postgres":
        server: Server = request.getfixturevalue("server")
        where = server.where(server.new_database())
    with connected(where) as found:
        yield found


def test_there_is_one_line_of_migrations() -> None:
    assert script().get_heads() == [f"{SCHEMA_VERSION:04d}"]


def test_migrations_lead_from_nothing_to_the_tables(engine: Engine) -> None:
    with writing(engine) as connection:
        migrate(connection)
    with engine.connect() as connection:
        context = MigrationContext.configure(connection)
        assert context.get_current_heads() == (f"{SCHEMA_VERSION:04d}",)
        assert compare_metadata(context, METADATA) == []
        assert set(inspect(connection).get_view_names()) == VIEWS


def test_the_tables_of_a_file_are_those_that_are_told(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Down to every CHECK, which the comparison above does not look at."""
    with connected(str(tmp_path / "straight.db")) as straight, writing(straight) as connection:
        METADATA.create_all(connection)
        expected = tables_by_name(stored_schema(connection))
    with sqlite_keeper.reading() as connection:
        found = tables_by_name(stored_schema(connection))
    del found["alembic_version"]
    assert found == expected


def tables_by_name(schema: str) -> dict[str, list[str]]:
    """Return the columns and conditions of each table's statement, in order of the alphabet.

    A column that was added later stands on one line with its condition.
    """
    statements = [one for one in schema.split(";\n") if one.startswith("CREATE TABLE ")]
    return {
        one.split()[2].strip('"'): sorted(piece.strip(" ,") for piece in PIECE.split(one))
        for one in statements
    }


def migrate_and_break_off(engine: Engine) -> None:
    with writing(engine) as connection:
        migrate(connection)
        raise KeyboardInterrupt


def test_a_migration_that_is_broken_off_leaves_nothing(engine: Engine) -> None:
    with pytest.raises(KeyboardInterrupt):
        migrate_and_break_off(engine)
    assert inspect(engine).get_table_names() == []


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


@pytest.mark.parametrize(
    "statement",
    [
        'DROP TRIGGER guard_add_update ON "add"',
        'ALTER TABLE "add" DISABLE TRIGGER guard_add_update',
        'ALTER TABLE "add" ENABLE REPLICA TRIGGER guard_add_update',
    ],
)
def test_a_guard_that_a_server_lost_is_told(statement: str, postgres_keeper: Keeper) -> None:
    with postgres_keeper.book.engine.begin() as connection:
        connection.exec_driver_sql(statement)
        assert list(schema_faults(connection)) == [
            "The book has lost its trigger guard_add_update, or it is switched off."
        ]


def test_there_is_a_book_of_every_version_and_the_past_ones_are_as_they_were() -> None:
    """Their roots were written down when each was new; the present one is renewed with the code."""
    assert {path.name for path in FOLDER.iterdir()} == {
        f"v{version}.sql" for version in range(1, SCHEMA_VERSION + 1)
    }
    assert [(old.entries, old.root) for old in OLD_BOOKS[:3]] == [
        (36, "2e46b5c8399f0f1f2a14e73aa5b3c472f99478626f85331d1e2ba47940d2755b"),
        (57, "a0c36f9e644e132b5faf637504baf873dd96b10f27747e6a661b296a1a609181"),
        (57, "a0c36f9e644e132b5faf637504baf873dd96b10f27747e6a661b296a1a609181"),
    ]


def test_the_kept_book_of_this_version_is_what_is_written_now(sqlite_walked: Keeper) -> None:
    assert OldBook(SCHEMA_VERSION).bodies() == [body.encode() for _, body in sqlite_walked.bodies()]


@pytest.mark.parametrize("old", OLD_BOOKS, ids=lambda old: f"v{old.version}")
def test_an_old_book_is_brought_to_this_version_with_the_same_root(
    old: OldBook, tmp_path: Path
) -> None:
    where = old.put(tmp_path / "book.db")
    with connected(where) as engine, writing(engine) as connection:
        migrate(connection)
    with opened(where, SetClock()) as keeper:
        assert verify(keeper.book).faults == ()
        bodies = keeper.bodies()
        assert [(seq, entry_text(read_entry(body))) for seq, body in bodies] == bodies
        with keeper.reading() as connection:
            assert (len(bodies), recorder.root(connection).hex()) == (old.entries, old.root)
            assert list(schema_faults(connection)) == []
        assert keeper.do("note", text="Written on.").seq == len(bodies) + 1
