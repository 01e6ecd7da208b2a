"""The book on a PostgreSQL server."""

import pytest

from tests.keeper import Keeper
from tests.store.contract.book import BookContract


class TestPostgres(BookContract):
    unknown_person = (
        'insert or update on table "entry" violates foreign key constraint "fk_entry_by"'
    )
    no_such_spine_row = (
        'insert or update on table "note" violates foreign key constraint "fk_note_seq_entry_kind"'
    )
    wrong_kind = 'new row for relation "note" violates check constraint "ck_note_entry_kind"'
    other_ways = (
        'TRUNCATE "{table}" CASCADE',
        'INSERT INTO "{table}" SELECT * FROM "{table}" LIMIT 1 '
        "ON CONFLICT ({keys}) DO UPDATE SET {key} = excluded.{key}",
    )

    @pytest.fixture
    def keeper(self, postgres_keeper: Keeper) -> Keeper:
        return postgres_keeper

    @pytest.fixture
    def walked(self, postgres_walked: Keeper) -> Keeper:
        return postgres_walked
