"""A book is made by its migrations, is what the tables say, and an old one is still read."""

from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Engine, inspect

from ledger.domain.entries.plain import entry_text, read_entry
from ledger.service.desk.book import open_book
from ledger.service.evidence.verify import verify
from ledger.store.engine.connections import SCHEMA_VERSION, connect, writing
from ledger.store.form.create import migrate, script
from ledger.store.form.schema import schema_faults
from ledger.store.form.tables import METADATA
from ledger.store.write import recorder
from tests.conftest import Server
from tests.keeper import Keeper, SetClock
from tests.old_books import OLD_BOOKS, OldBook

VIEWS = {"in_force", "movement", "last_level", "on_hand", "verdict", "lot_status"}


@pytest.fixture(params=["sqlite", "postgres"])
def engine(request: pytest.FixtureRequest, tmp_path: Path) -> Engine:
    """A database with nothing in it."""
    if request.param == "sqlite":
        return connect(str(tmp_path / "book.db"))
    server: Server = request.getfixturevalue("server")
    return connect(server.where(server.new_database()))


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


def test_there_is_a_book_of_every_past_version() -> None:
    assert [old.version for old in OLD_BOOKS] == list(range(1, SCHEMA_VERSION))


@pytest.mark.parametrize("old", OLD_BOOKS, ids=lambda old: f"v{old.version}")
def test_an_old_book_is_brought_to_this_version_with_the_same_root(
    old: OldBook, tmp_path: Path
) -> None:
    where = old.put(tmp_path / "book.db")
    with writing(connect(where)) as connection:
        migrate(connection)
    keeper = Keeper(open_book(where), SetClock())
    assert verify(keeper.book).faults == ()
    bodies = keeper.bodies()
    assert [(seq, entry_text(read_entry(body))) for seq, body in bodies] == bodies
    with keeper.reading() as connection:
        assert (len(bodies), recorder.root(connection).hex()) == (old.entries, old.root)
        assert list(schema_faults(connection)) == []
    assert keeper.do("note", text="Written on.").seq == len(bodies) + 1
