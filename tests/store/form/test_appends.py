"""The guards of what is added: taken off for a bulk of rows and put back as they were."""

import pytest

from ledger.domain.rules.always.clocks import CLOCK_ERROR
from ledger.store.form.appends import guard_name, out_of_order, postgres_order, sqlite_order
from ledger.store.form.guards import SENTENCE
from ledger.store.form.schema import schema_faults
from ledger.store.form.tables import METADATA
from tests.keeper import Keeper


@pytest.mark.parametrize("engine", ["sqlite_walked", "postgres_walked"])
def test_a_bulk_of_rows_leaves_the_guards_as_they_were(
    engine: str, request: pytest.FixtureRequest
) -> None:
    keeper: Keeper = request.getfixturevalue(engine)
    with keeper.book.writing() as connection:
        with out_of_order(connection):
            told = set(schema_faults(connection))
        assert {f"trigger {guard_name(table)}" in " ".join(told) for table in METADATA.tables} == {
            True
        }
        assert list(schema_faults(connection)) == []


def test_the_guards_allow_clocks_the_error_that_the_rule_does() -> None:
    assert CLOCK_ERROR.total_seconds() == 3600
    (clock,) = (words for words in sqlite_order(["entry"]) if "guard_entry_clock" in words)
    assert "'-1 hour'" in clock


def test_a_table_of_a_later_form_is_guarded_by_the_function_that_is_there() -> None:
    assert postgres_order(["smell"]) == [
        'CREATE TRIGGER guard_smell_order BEFORE INSERT ON "smell" FOR EACH ROW EXECUTE FUNCTION '
        "guard_order()"
    ]


def test_what_is_added_is_held_to_the_last_entry_or_the_next() -> None:
    last, following = (
        "(SELECT MAX(seq) FROM entry)",
        "COALESCE((SELECT MAX(seq) FROM entry), 0) + 1",
    )
    for table, unfit in {
        "entry": f"NEW.seq IS NOT {following}",
        "lot": f"NEW.id IS NOT {following}",
        "person_key": f"NEW.seq IS NOT {following}",
        "material_key": f"NEW.seq IS NOT {following}",
        "tree": f"((NEW.place + 1) << NEW.height) IS NOT {last}",
        "alembic_version": "true",
        "note": f"NEW.seq IS NOT {last}",
    }.items():
        assert sqlite_order([table])[0] == (
            f'CREATE TRIGGER guard_{table}_order BEFORE INSERT ON "{table}" WHEN {unfit} '
            f"BEGIN SELECT RAISE(ABORT, '{SENTENCE}'); END"
        )
    made, guard = postgres_order(["note"], "book")
    assert made.startswith(
        "CREATE FUNCTION guard_order() RETURNS trigger LANGUAGE plpgsql "
        'SET search_path = "book", pg_temp AS $$\nDECLARE'
    )
    assert guard.startswith("CREATE TRIGGER guard_note_order BEFORE INSERT")
