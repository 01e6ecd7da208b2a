"""What a file's database knows of its own storage is told, a sentence each."""

import sqlite3
from contextlib import closing

import pytest
from sqlalchemy import Connection

from ledger.service.evidence.verify import verify
from ledger.store.audit.storage import engine_faults
from ledger.store.form.kept import kept_schema
from ledger.store.form.schema import stored_schema
from tests.keeper import Keeper

BROKEN = [
    ("add", "minutes", "-1"),
    ("entry", "origin", "'hearsay'"),
    ("entry", "leaf", "x'00'"),
    ("posting", "place", "'nowhere'"),
    ("posting", "taken", "-1"),
    ("tree", "hash", "x'00'"),
    ("lot", "code", "'LONGER-THAN-TWENTY-' || id"),
]


def faults_on(keeper: Keeper) -> list[str]:
    with keeper.reading() as connection:
        return list(engine_faults(connection))


def spoil(keeper: Keeper, *statements: str) -> None:
    """Change a book past its guards and conditions, and put the guards back."""
    with closing(sqlite3.connect(keeper.book.where)) as hostile, hostile:
        guards = hostile.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
        kept = guards.fetchall()
        hostile.execute("PRAGMA ignore_check_constraints = ON")
        for name, _ in kept:
            hostile.execute(f'DROP TRIGGER "{name}"')
        for statement in statements:
            hostile.execute(statement)
        for _, words in kept:
            hostile.execute(words)


def test_of_a_sound_book_nothing_is_told(sqlite_walked: Keeper) -> None:
    assert faults_on(sqlite_walked) == []


@pytest.mark.parametrize(("table", "column", "value"), BROKEN)
def test_a_row_that_breaks_a_condition_of_its_table_is_told(
    table: str, column: str, value: str, sqlite_walked: Keeper
) -> None:
    spoil(sqlite_walked, f'UPDATE "{table}" SET "{column}" = {value}')
    told = f"The table {table} holds what its conditions do not allow."
    assert told in faults_on(sqlite_walked)
    assert told in [fault.what for fault in verify(sqlite_walked.book).faults]


def test_of_many_tables_that_break_their_conditions_five_are_told(sqlite_walked: Keeper) -> None:
    wrong = {table: (column, value) for table, column, value in BROKEN} | {
        "look": ("grade", "'murky'"),
    }
    assert len(wrong) == 6
    spoil(sqlite_walked, *(f'UPDATE "{t}" SET "{c}" = {v}' for t, (c, v) in wrong.items()))
    told = [what for what in faults_on(sqlite_walked) if "conditions" in what]
    assert len(set(told)) == len(told) == 5


def test_another_version_than_this_one_is_told(
    sqlite_walked: Keeper, postgres_walked: Keeper
) -> None:
    spoil(sqlite_walked, "UPDATE alembic_version SET version_num = '0007'")
    assert faults_on(sqlite_walked) == ["The book's version is written as ['0007'], not 0008."]
    assert faults_on(postgres_walked) == []
    with postgres_walked.book.engine.begin() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = 'eight'")
    assert faults_on(postgres_walked) == ["The book's version is written as ['eight'], not 0008."]


def test_rows_that_refer_to_what_is_not_there_are_told_up_to_five(sqlite_walked: Keeper) -> None:
    told = "A row of the table posting refers to a row of lot that is not there."
    one = "(SELECT seq, line FROM posting WHERE target IS NOT NULL LIMIT 1)"
    spoil(sqlite_walked, f"UPDATE posting SET target = 999 WHERE (seq, line) = {one}")
    assert [what for what in faults_on(sqlite_walked) if "refers" in what] == [told]
    spoil(sqlite_walked, "UPDATE posting SET target = 999")
    assert [what for what in faults_on(sqlite_walked) if "refers" in what] == [told] * 5


def test_every_condition_of_the_schema_is_asked_for(sqlite_walked: Keeper) -> None:
    asked: list[str] = []
    with sqlite_walked.reading() as connection:
        trace_into(connection, asked)
        assert list(engine_faults(connection)) == []
        assert stored_schema(connection).count(" CHECK (") == kept_schema().count(" CHECK (")
    of_rows = [statement for statement in asked if "sqlite_master" not in statement]
    assert " ".join(of_rows).count("NOT (") == kept_schema().count(" CHECK (")


def test_conditions_hold_again_after_they_were_left_out(sqlite_walked: Keeper) -> None:
    with sqlite_walked.reading() as connection:
        assert list(engine_faults(connection)) == []
        left_out = connection.exec_driver_sql("PRAGMA ignore_check_constraints").scalar_one()
    assert left_out == 0


def trace_into(connection: Connection, asked: list[str]) -> None:
    driver = connection.connection.driver_connection
    assert isinstance(driver, sqlite3.Connection)
    driver.set_trace_callback(lambda words: asked.append(words))
