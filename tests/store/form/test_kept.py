"""The schema that is kept: its statements by what they make."""

from ledger.store.form.kept import by_name, kept_schema, kept_views


def test_statements_are_named_by_what_they_make() -> None:
    found = by_name('CREATE TABLE "add" (seq);\nCREATE UNIQUE INDEX ix ON "add" (seq);\n')
    assert found == {
        "table add": 'CREATE TABLE "add" (seq)',
        "index ix": 'CREATE UNIQUE INDEX ix ON "add" (seq)',
    }


def test_the_kept_schema_has_its_tables_views_and_guards() -> None:
    kept = by_name(kept_schema())
    assert {"table entry", "view on_hand", "trigger guard_entry_update"} <= kept.keys()
    assert all(query.startswith("SELECT") for query in kept_views().values())
    assert {"in_force", "on_hand", "verdict"} <= kept_views().keys()
