"""The book is only ever added to, whoever asks the database."""

from contextlib import nullcontext

import pytest
from sqlalchemy import select
from sqlalchemy.exc import DBAPIError

from ledger.service.evidence.verify import verify
from ledger.store.form.appends import CLOCK_SENTENCE, out_of_order
from ledger.store.form.guards import SENTENCE
from ledger.store.form.tables import ENTRY, METADATA
from tests.keeper import Keeper

_SPINE = (
    "INSERT INTO entry SELECT {seq}, kind, lot, happened_at, offset_min, precision, recorded_at, "
    'origin, sheet, "by", NULL, {seq}, reason, body, leaf FROM entry WHERE seq = {{last}}'
)
OUT_OF_ORDER = {
    "an entry far on": _SPINE.format(seq="{last} + 1000"),
    "an entry before the first": _SPINE.format(seq="-1"),
    "a row of an older entry": "INSERT INTO posting VALUES (12, 99, NULL, NULL, 'sold', 1, 1)",
    "a level of an older entry": "INSERT INTO level VALUES (2, 9, 1)",
    "a lot that nothing opens": "INSERT INTO lot VALUES ({last}, 'X-1', 'bulk', 'uL')",
    "a person of an older entry": "INSERT INTO person_key VALUES ('ZZ', 2)",
    "a node that nothing completes": "INSERT INTO tree SELECT 40, 7, hash FROM tree WHERE place=0 "
    "AND height = 1",
    "another version": "INSERT INTO alembic_version VALUES ('0001b')",
}
"""What a role that may add could wreck the book by."""


def refusal(keeper: Keeper, statement: str, *, in_order: bool = True) -> str:
    """Return what the database says when it refuses a statement, its guards of order on or off."""
    with (
        pytest.raises(DBAPIError) as raised,
        keeper.book.engine.connect() as connection,
        connection.begin(),
        nullcontext() if in_order else out_of_order(connection),
    ):
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

    @pytest.mark.parametrize("statement", OUT_OF_ORDER.values(), ids=OUT_OF_ORDER)
    def test_what_does_not_follow_on_the_last_entry_is_not_added(
        self, statement: str, walked: Keeper
    ) -> None:
        last = walked.bodies()[-1][0]
        assert refusal(walked, statement.format(last=last, next=last + 1)) == SENTENCE
        assert verify(walked.book).faults == ()

    def test_the_time_of_recording_does_not_run_back_without_a_reason(self, walked: Keeper) -> None:
        last = walked.bodies()[-1][0]
        columns = ", ".join(f'"{name}"' for name in ENTRY.columns.keys())  # noqa: SIM118 - names
        back = "'2019-01-01T00:00:00Z'"
        for name, cell in (("seq", "seq + 1"), ("recorded_at", back), ("reason", "NULL")):
            columns = columns.replace(f'"{name}"', cell)
        told = refusal(walked, f"INSERT INTO entry SELECT {columns} FROM entry WHERE seq = {last}")
        assert told == CLOCK_SENTENCE

    def test_a_row_on_an_entry_of_another_kind_is_refused(self, walked: Keeper) -> None:
        spine = _number_of(walked, "house")
        told = refusal(
            walked, f"INSERT INTO note VALUES ({spine}, 'note', 'Some words.')", in_order=False
        )
        assert told == self.no_such_spine_row

    def test_a_row_that_owns_to_another_kind_is_refused(self, walked: Keeper) -> None:
        spine = _number_of(walked, "house")
        told = refusal(
            walked, f"INSERT INTO note VALUES ({spine}, 'house', 'Some words.')", in_order=False
        )
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
