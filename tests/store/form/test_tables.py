"""The tables as they are told are those of a book's file."""

import re
from pathlib import Path

from ledger.store.engine.connections import connected, writing
from ledger.store.form.schema import stored_schema
from ledger.store.form.tables import METADATA
from tests.keeper import Keeper

PIECE = re.compile(r"\n|, (?=[a-z_]+ (?:INTEGER|TEXT)\b)| (?=CONSTRAINT [cf]k_)")
ADDED = re.compile(r"(\b[a-z_]+) TEXT CONSTRAINT (fk_[a-z_]+) REFERENCES")
"""A column that was added later with what it refers to, which else stands on a line of its own."""


def test_the_tables_of_a_file_are_those_that_are_told(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Down to every CHECK, which the comparison above does not look at."""
    with connected(str(tmp_path / "straight.db")) as straight, writing(straight) as connection:
        METADATA.create_all(connection)
        expected = tables_by_name(stored_schema(connection))
    with sqlite_keeper.reading() as connection:
        found = tables_by_name(stored_schema(connection))
    del found["alembic_version"]
    assert found == expected


def tables_by_name(schema: str) -> dict[str, list[str]]:
    """Return the columns and conditions of each table's statement, in order of the alphabet.

    A column that was added later stands on one line with its condition.
    """
    schema = ADDED.sub(r"\1 TEXT CONSTRAINT \2 FOREIGN KEY(\1) REFERENCES", schema)
    statements = [one for one in schema.split(";\n") if one.startswith("CREATE TABLE ")]
    return {
        one.split()[2].strip('"'): sorted(piece.strip(" ,") for piece in PIECE.split(one))
        for one in statements
    }
