"""Migrations lead to what the tables say, and an old book is brought to it and read."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Engine, inspect

from ledger.domain.entries.plain import entry_text, read_entry
from ledger.service.evidence.verify import verify
from ledger.store.engine.connections import SCHEMA_VERSION, connected, writing
from ledger.store.form.migrate import migrate, script
from ledger.store.form.schema import schema_faults
from ledger.store.form.tables import METADATA
from ledger.store.write import recorder
from tests.conftest import Server, opened
from tests.keeper import Keeper, SetClock
from tests.old_books import FOLDER, OLD_BOOKS, OldBook

VIEWS = {
    "in_force",
    "movement",
    "last_level",
    "on_hand",
    "party_shown",
    "verdict",
    "reopening",
    "lot_status",
    *("v_entries", "v_looks", "v_money", "v_moves", "v_receipts", "v_stock"),
}


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


def migrate_and_break_off(engine: Engine) -> None:
    with writing(engine) as connection:
        migrate(connection)
        raise KeyboardInterrupt


def test_a_migration_that_is_broken_off_leaves_nothing(engine: Engine) -> None:
    with pytest.raises(KeyboardInterrupt):
        migrate_and_break_off(engine)
    assert inspect(engine).get_table_names() == []


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
        assert (
            keeper.do("note", text="Written on.", because="a book of another year").seq
            == len(bodies) + 1
        )
