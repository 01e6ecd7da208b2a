"""The statements that guard the tables: no change, no deletion, no replacement."""

import sqlite3
from contextlib import closing

import pytest

from ledger.store.form.guards import (
    SENTENCE,
    erasable_on_server,
    postgres_guards,
    postgres_table_guards,
    sqlite_guards,
)

KEYS = {"pair": [["a", "b"], ["c"]]}
TABLE = "CREATE TABLE pair (a, b, c, PRIMARY KEY (a, b), UNIQUE (c))"


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE pair SET c = 9",
        "DELETE FROM pair",
        "INSERT OR REPLACE INTO pair VALUES (1, 2, 9)",
        "INSERT OR REPLACE INTO pair VALUES (9, 9, 3)",
    ],
)
def test_a_guarded_table_is_only_added_to(statement: str) -> None:
    with closing(sqlite3.connect(":memory:")) as client:
        client.execute(TABLE)
        for guard in sqlite_guards(KEYS):
            client.execute(guard)
        client.execute("INSERT INTO pair VALUES (1, 2, 3)")
        client.execute("INSERT INTO pair VALUES (1, 3, 4)")
        with pytest.raises(sqlite3.IntegrityError) as raised:
            client.execute(statement)
        assert str(raised.value) == SENTENCE
        assert client.execute("SELECT * FROM pair").fetchall() == [(1, 2, 3), (1, 3, 4)]


def test_a_server_guards_against_emptying_too() -> None:
    told = postgres_table_guards(["pair"])
    assert [statement.split()[2] for statement in told] == [
        "guard_pair_update",
        "guard_pair_delete",
        "guard_pair_truncate",
    ]


def test_the_guards_of_a_server_begin_with_what_they_do() -> None:
    function, *guards = postgres_guards(["pair"])
    assert function == (
        "CREATE FUNCTION guard_book() RETURNS trigger LANGUAGE plpgsql AS "
        f"$$ BEGIN RAISE EXCEPTION '{SENTENCE}'; END $$"
    )
    assert guards == postgres_table_guards(["pair"])
    assert guards[0] == (
        'CREATE TRIGGER guard_pair_update BEFORE UPDATE ON "pair" '
        "FOR EACH STATEMENT EXECUTE FUNCTION guard_book()"
    )


def test_of_what_may_be_erased_a_row_goes_that_an_entry_says_is_forgotten() -> None:
    *kept, function, guard = erasable_on_server("details", "book")
    assert [one.split()[2] for one in kept] == ["guard_details_update", "guard_details_truncate"]
    assert " ".join(function.split()) == (
        "CREATE FUNCTION guard_erased() RETURNS trigger LANGUAGE plpgsql "
        'SET search_path = "book", pg_temp AS $$ BEGIN IF NOT EXISTS (SELECT 1 FROM '
        "forget_entries WHERE entry = OLD.seq AND is_kept = 0) THEN RAISE EXCEPTION "
        f"'{SENTENCE}'; END IF; RETURN OLD; END$$"
    )
    assert guard == (
        'CREATE TRIGGER guard_details_delete BEFORE DELETE ON "details" '
        "FOR EACH ROW EXECUTE FUNCTION guard_erased()"
    )
