"""The tables as they are told are those of a book's file."""

import re
from pathlib import Path

import pytest
from sqlalchemy import MetaData
from sqlalchemy.dialects.sqlite import dialect
from sqlalchemy.schema import CreateIndex

from ledger.domain.entries import FACTS
from ledger.domain.entries.fields import specs
from ledger.store.engine.connections import connected, writing
from ledger.store.form import tables
from ledger.store.form.schema import stored_schema
from ledger.store.form.tables import METADATA
from tests.keeper import Keeper

PIECE = re.compile(r"\n|, (?=[a-z_]+ (?:INTEGER|TEXT)\b)| (?=CONSTRAINT [cf]k_)")
ADDED = re.compile(r"(\b[a-z_]+) TEXT CONSTRAINT (fk_[a-z_]+) REFERENCES")
"""A column that was added later with what it refers to, which else stands on a line of its own."""


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch) -> MetaData:
    """The tables, with those of the kinds of entries made anew of what these hold."""
    made = MetaData(naming_convention=METADATA.naming_convention)
    of_kinds = {*tables.TYPED.values(), *tables.CHILDREN.values()}
    for table in METADATA.tables.values():
        if table not in of_kinds:
            table.to_metadata(made)
    monkeypatch.setattr(tables, "METADATA", made)
    for kind, facts in FACTS.items():
        tables._typed(kind, facts)
    for kind, name in tables.CHILDREN:
        tables._children(kind, next(spec for spec in specs(FACTS[kind]) if spec.name == name))
    return made


def test_the_tables_of_a_file_are_those_that_are_told(
    told: MetaData, sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Down to every CHECK, which the comparison above does not look at."""
    with connected(str(tmp_path / "straight.db")) as straight, writing(straight) as connection:
        told.create_all(connection)
        expected = tables_by_name(stored_schema(connection))
    with sqlite_keeper.reading() as connection:
        schema = stored_schema(connection)
    found = tables_by_name(schema)
    del found["alembic_version"]
    assert found == expected
    indices = (index for table in METADATA.tables.values() for index in table.indexes)
    words = (str(CreateIndex(index).compile(dialect=dialect())) for index in indices)
    assert set(words) == {one for one in schema.split(";\n") if " INDEX " in one}


def test_no_table_refers_to_one_that_waits_for_it_to_be_made() -> None:
    """SQLAlchemy warns of a circle that none of its references breaks."""
    assert {*METADATA.sorted_tables} == {*METADATA.tables.values()}


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
