"""The book is only ever added to, whoever asks the database."""

import pytest
from sqlalchemy import select
from sqlalchemy.exc import DBAPIError

from ledger.store.form.guards import SENTENCE
from ledger.store.form.tables import ENTRY, METADATA
from tests.keeper import Keeper


def refusal(keeper: Keeper, statement: str) -> str:
    """Return what the database says when it refuses a statement."""
    with pytest.raises(DBAPIError) as raised, keeper.book.engine.begin() as connection:
        connection.exec_driver_sql(statement)
    return str(raised.value.orig).splitlines()[0]


def every_row(keeper: Keeper) -> dict[str, list[tuple[object, ...]]]:
    with keeper.reading() as connection:
        return {
            name: [
                tuple(row)
                for row in connection.execute(select(table).order_by(*table.primary_key.columns))
            ]
            for name, table in METADATA.tables.items()
        }


class GuardsContract:
    """Its tests need the fixture `walked`: a book with a row in every table.

    A subclass says in which other ways its storage could change or lose rows, and how it tells of
    a breach of a constraint.
    """

    other_ways: tuple[str, ...]
    """Statements, with {table}, its first {key} and all its {keys} to be filled in."""
    no_such_spine_row: str
    """What the storage says of a typed row on a spine row of another kind."""
    wrong_kind: str
    """What it says of a typed row that owns to another kind."""

    def test_no_table_lets_a_row_be_changed_or_taken_away(self, walked: Keeper) -> None:
        before = every_row(walked)
        for way in (
            'UPDATE "{table}" SET {key} = {key}',
            'DELETE FROM "{table}"',
            *self.other_ways,
        ):
            told = {name: refusal(walked, _filled(way, name)) for name in METADATA.tables}
            assert told == dict.fromkeys(METADATA.tables, SENTENCE), way
        assert every_row(walked) == before

    def test_a_row_on_an_entry_of_another_kind_is_refused(self, walked: Keeper) -> None:
        spine = _number_of(walked, "house")
        told = refusal(walked, f"INSERT INTO note VALUES ({spine}, 'note', 'Some words.')")
        assert told == self.no_such_spine_row

    def test_a_row_that_owns_to_another_kind_is_refused(self, walked: Keeper) -> None:
        spine = _number_of(walked, "house")
        told = refusal(walked, f"INSERT INTO note VALUES ({spine}, 'house', 'Some words.')")
        assert told == self.wrong_kind


def _filled(way: str, name: str) -> str:
    keys = METADATA.tables[name].primary_key.columns.keys()
    return way.format(
        table=name,
        key=f'"{keys[0]}"',
        keys=", ".join(f'"{key}"' for key in keys),
    )


def _number_of(keeper: Keeper, kind: str) -> int:
    with keeper.reading() as connection:
        query = select(ENTRY.c.seq).where(ENTRY.c.kind == kind).order_by(ENTRY.c.seq)
        return int(connection.execute(query).scalars().first() or 0)
