"""Verifying tells what differs in the form of the book: tables, views, guards, version."""

from pathlib import Path

import pytest

from tests.service.hostile import found_in, run, run_openly

DIFFERENCES = [
    pytest.param(
        "DROP TRIGGER guard_entry_update",
        "The book has lost its trigger guard_entry_update.",
        id="a guard taken off",
    ),
    pytest.param(
        "UPDATE sqlite_master SET sql = replace(sql, 'BEFORE', 'AFTER') "
        "WHERE name = 'guard_entry_delete'",
        "The trigger guard_entry_delete is not as the book was made with it.",
        id="a guard changed",
    ),
    pytest.param(
        "DROP VIEW lot_status", "The book has lost its view lot_status.", id="a view taken away"
    ),
    pytest.param(
        "UPDATE sqlite_master SET sql = replace(sql, 'kind <> ', 'kind = ') "
        "WHERE name = 'in_force'",
        "The view in_force is not as the book was made with it.",
        id="a view changed",
    ),
    pytest.param(
        "CREATE TABLE extra (a)",
        "The book holds the table extra, which it was not made with.",
        id="a table too many",
    ),
    pytest.param(
        "CREATE VIEW extra AS SELECT 1",
        "The book holds the view extra, which it was not made with.",
        id="a view too many",
    ),
    pytest.param(
        "CREATE TRIGGER more AFTER INSERT ON note BEGIN SELECT 1; END",
        "The book holds the trigger more, which it was not made with.",
        id="a trigger too many",
    ),
    pytest.param(
        "CREATE INDEX more ON note (text)",
        "The book holds the index more, which it was not made with.",
        id="an index too many",
    ),
    pytest.param(
        "DROP INDEX ix_entry_lot", "The book has lost its index ix_entry_lot.", id="an index lost"
    ),
    pytest.param("DROP TABLE note", "The book has lost its table note.", id="a table lost"),
    pytest.param(
        "DROP TABLE entry", "The book has lost its table entry.", id="the table of entries lost"
    ),
    pytest.param(
        "DROP TABLE alembic_version",
        "The book has lost its table alembic_version.",
        id="the version's table lost",
    ),
    pytest.param(
        "ALTER TABLE note ADD COLUMN extra TEXT",
        "The table note is not as the book was made with it.",
        id="a column too many",
    ),
    pytest.param(
        "UPDATE sqlite_master SET sql = replace(sql, 'CHECK (amount > 0)', "
        "'CHECK (amount > -9)') WHERE name = 'add'",
        "The table add is not as the book was made with it.",
        id="a check changed",
    ),
    pytest.param(
        "UPDATE sqlite_master SET name = 'ENTRY' WHERE name = 'entry' AND type = 'table'",
        "The file's list of tables differs at: table ENTRY of entry.",
        id="a name in the list of tables",
    ),
]


@pytest.mark.parametrize(("statement", "what"), DIFFERENCES)
def test_what_differs_from_the_form_of_the_book_is_told(
    statement: str, what: str, path: Path
) -> None:
    run_openly(path, statement)
    assert what in found_in(path)


@pytest.mark.parametrize(
    ("statement", "what"),
    [
        pytest.param(
            "UPDATE alembic_version SET version_num = '0001'",
            "The book's version is written as ['0001'], not 0008.",
            id="changed",
        ),
        pytest.param(
            "DELETE FROM alembic_version",
            "The book's version is written as [], not 0008.",
            id="lost",
        ),
        pytest.param(
            "INSERT INTO alembic_version VALUES ('0001b')",
            "The book's version is written as ['0008', '0001b'], not 0008.",
            id="told twice",
        ),
    ],
)
def test_a_version_that_is_not_the_books_is_told(statement: str, what: str, path: Path) -> None:
    run(path, statement)
    assert found_in(path) == [what]


def test_every_guard_is_missed(path: Path) -> None:
    guards = [
        f"guard_{table}_{act}"
        for table in ("entry", "posting", "tree", "formula_lines", "person_key")
        for act in ("update", "delete", "insert")
    ]
    run_openly(path, *(f"DROP TRIGGER {guard}" for guard in guards))
    told = {f"The book has lost its trigger {guard}." for guard in guards}
    assert set(found_in(path)) == told


def test_a_row_that_refers_to_nothing_is_told(path: Path) -> None:
    run(path, "UPDATE entry SET by = 'ZZ' WHERE seq = 20")
    assert "A row of the table entry refers to a row of person_key that is not there." in (
        found_in(path)
    )


def test_an_index_that_lost_a_row_is_told(path: Path) -> None:
    """The table says all that it should; only what finds its rows is spoilt."""
    run_openly(
        path,
        "UPDATE sqlite_master SET sql = sql || ' WHERE lot > 30' WHERE name = 'ix_entry_lot'",
    )
    run_openly(
        path,
        "REINDEX ix_entry_lot",
        "UPDATE sqlite_master SET sql = replace(sql, ' WHERE lot > 30', '') "
        "WHERE name = 'ix_entry_lot'",
    )
    assert any("missing from index ix_entry_lot" in what for what in found_in(path))
