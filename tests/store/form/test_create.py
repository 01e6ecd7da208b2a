"""A new file is made at once, as its migrations would have made it step by step."""

from pathlib import Path

from sqlalchemy import Connection

from ledger.store.engine.connections import Engine, connected, reading, writing
from ledger.store.form.create import create_book
from ledger.store.form.kept import by_name
from ledger.store.form.migrate import migrate
from ledger.store.form.schema import stored_schema

MARKS = ("application_id", "user_version", "page_size", "encoding", "auto_vacuum")


def told(engine: Engine) -> tuple[dict[str, str], list[object], list[object]]:
    """Return the form of a file, its number, and the marks in its header."""
    with reading(engine) as connection:
        form = by_name(stored_schema(connection))
        number = connection.exec_driver_sql("SELECT * FROM alembic_version").scalars().all()
        marks = [connection.exec_driver_sql(f"PRAGMA {mark}").scalar() for mark in MARKS]
    return form, [*number], marks


def test_a_new_file_is_what_its_migrations_would_have_made(tmp_path: Path) -> None:
    with connected(str(tmp_path / "migrated.db")) as migrated:
        with writing(migrated) as connection:
            migrate(connection)
        wanted = told(migrated)
    where = str(tmp_path / "new.db")
    with connected(where) as engine:
        create_book(engine, where)
        assert told(engine) == wanted


def test_all_is_there_when_the_book_is_filled(tmp_path: Path) -> None:
    found: list[str] = []

    def fill(connection: Connection) -> None:
        found.extend(by_name(stored_schema(connection)))

    where = str(tmp_path / "new.db")
    with connected(where) as engine:
        create_book(engine, where, fill)
    assert {"table entry", "view on_hand", "trigger guard_entry_update"} <= {*found}
