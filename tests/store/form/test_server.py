"""The form of a book on a server: what it lost is told."""

import pytest

from ledger.store.form.schema import schema_faults
from tests.keeper import Keeper


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
