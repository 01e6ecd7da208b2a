"""The form of a book on a server: what it lost is told."""

import pytest
from sqlalchemy import Connection, Table

from ledger.store.form import server as looked_at
from ledger.store.form.kept import kept_views
from ledger.store.form.schema import schema_faults
from tests.keeper import Keeper

DAMAGES = (
    "CREATE TABLE beside (a int)",
    "DROP VIEW v_stock; CREATE TABLE v_stock (a int)",
    'ALTER TABLE "add" ALTER COLUMN minutes SET NOT NULL',
    "ALTER TABLE look DROP CONSTRAINT ck_look_ntu_milli",
    "ALTER TABLE note ADD COLUMN more int",
    "ALTER TABLE level DROP CONSTRAINT ck_level_amount; "
    "ALTER TABLE level ADD CONSTRAINT ck_level_amount CHECK (amount >= -1)",
    'CREATE TRIGGER mine BEFORE UPDATE ON "add" FOR EACH STATEMENT EXECUTE FUNCTION guard_book()',
    "DROP TRIGGER guard_details_delete ON details",
    "DROP TRIGGER guard_alembic_version_order ON alembic_version",
    "DROP TRIGGER guard_look_order ON look; CREATE TRIGGER guard_look_order AFTER INSERT ON look "
    "FOR EACH ROW EXECUTE FUNCTION guard_order()",
    "DROP TRIGGER guard_note_update ON note; CREATE TRIGGER guard_note_update BEFORE UPDATE ON "
    "note FOR EACH STATEMENT EXECUTE FUNCTION guard_order()",
    "DROP TRIGGER guard_judge_update ON judge",
    "ALTER TABLE start DISABLE TRIGGER guard_start_update",
    "ALTER TABLE move ENABLE REPLICA TRIGGER guard_move_update",
    "CREATE RULE mine AS ON INSERT TO filter DO ALSO NOTHING",
    "ALTER TABLE rest ENABLE ROW LEVEL SECURITY",
    "ALTER FUNCTION guard_order() RESET search_path",
    "CREATE FUNCTION heard() RETURNS event_trigger LANGUAGE plpgsql AS $$ BEGIN END $$; "
    "CREATE EVENT TRIGGER mine ON ddl_command_start EXECUTE FUNCTION heard()",
    "CREATE OR REPLACE VIEW on_hand AS SELECT * FROM (SELECT * FROM on_hand) AS kept",
)
TOLD = [
    "The book holds the table beside, which it was not made with.",
    "The book has lost its view v_stock.",
    "The book holds the table v_stock, which it was not made with.",
    "The table add is not as the book was made with it.",
    "The table look is not as the book was made with it.",
    "The table note is not as the book was made with it.",
    "The condition ck_level_amount of level is not as the book was made with it.",
    "The book has lost its trigger guard_alembic_version_order, or it is switched off.",
    "The book has lost its trigger guard_details_delete, or it is switched off.",
    "The book has lost its trigger guard_judge_update, or it is switched off.",
    "The book has lost its trigger guard_look_order, or it is switched off.",
    "The book has lost its trigger guard_move_update, or it is switched off.",
    "The book has lost its trigger guard_note_update, or it is switched off.",
    "The book has lost its trigger guard_start_update, or it is switched off.",
    "The book holds the trigger mine, which it was not made with.",
    "The book holds the rule mine on filter, which it was not made with.",
    "The guards of the book do not refuse as they were made to.",
    "The table rest has row-level security, which it was not made with.",
    "The database has the event trigger mine, which can change what the book does.",
    "The view on_hand is not as the book was made with it.",
    "The view v_stock is not as the book was made with it.",
]


def test_all_that_was_changed_on_a_server_is_told_a_sentence_each(postgres_keeper: Keeper) -> None:
    with postgres_keeper.book.engine.connect() as connection:
        for damage in DAMAGES:
            connection.exec_driver_sql(damage)
        assert list(schema_faults(connection)) == TOLD
        connection.rollback()
        assert list(schema_faults(connection)) == []


def test_what_cannot_be_compared_is_told_with_its_reason_and_all_else_is_compared(
    postgres_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is made for a trial is made at once, and each alone where one of them cannot be."""
    parts, views = looked_at._parts, kept_views()

    def unknown(connection: Connection, table: Table) -> str:
        return "(a nil)" if table.name == "look" else parts(connection, table)

    monkeypatch.setattr(looked_at, "_parts", unknown)
    monkeypatch.setattr(looked_at, "kept_views", lambda: {**views, "on_hand": "SELECT nothing"})
    with postgres_keeper.book.engine.connect() as connection:
        for damage in (DAMAGES[5], DAMAGES[1]):
            connection.exec_driver_sql(damage)
        assert list(schema_faults(connection)) == [
            "The book has lost its view v_stock.",
            "The book holds the table v_stock, which it was not made with.",
            "The condition ck_level_amount of level is not as the book was made with it.",
            'The conditions of the table look could not be compared: type "nil" does not exist.',
            'The view on_hand could not be compared: column "nothing" does not exist.',
            "The view v_stock is not as the book was made with it.",
        ]
        connection.rollback()
