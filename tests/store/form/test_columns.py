"""The names by which rows are put in are those of the tables."""

import pytest

from ledger.store.form.columns import IN_ORDER, columns_of
from ledger.store.form.tables import METADATA


def test_every_table_is_named_once() -> None:
    assert sorted(IN_ORDER) == sorted(METADATA.tables)


@pytest.mark.parametrize("table", METADATA.tables)
def test_a_table_has_the_columns_that_are_named(table: str) -> None:
    assert columns_of(table) == tuple(METADATA.tables[table].columns.keys())


def test_no_table_comes_before_one_that_its_rows_refer_to_at_once() -> None:
    places = {table: place for place, table in enumerate(IN_ORDER)}
    for name, table in METADATA.tables.items():
        at_once = [key for key in table.foreign_keys if not key.deferrable]
        assert all(places[key.column.table.name] <= places[name] for key in at_once)
