"""Readings side by side ask a server at once what each of them asks next."""

from collections.abc import Callable, Sequence

import pytest
from sqlalchemy import Connection

from ledger.errors import RefusedError
from ledger.service.account.codes import known_lot
from ledger.store.engine import statements
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import acting, foresee
from ledger.store.engine.statements import run
from ledger.store.engine.turn import Part
from ledger.store.read import queries
from tests.keeper import Keeper

CODES = ("OE-001-5", "NS-001-J", "SOO-001-3")


@pytest.fixture
def sent(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """How many statements each journey had."""
    told: list[int] = []
    straight = statements.together

    def heard(connection: Connection, parts: Sequence[Part]) -> list[list[object]]:
        told.append(len(parts))
        return straight(connection, parts)

    monkeypatch.setattr(statements, "together", heard)
    return told


def entries_of(connection: Connection, code: str) -> Callable[[], int]:
    return lambda: len(queries.entries_of_lot(connection, known_lot(connection, code).seq))


def both(connection: Connection) -> tuple[int, int]:
    one, other = abreast(connection, *(entries_of(connection, code) for code in CODES[:2]))
    return one, other


def test_it_takes_as_many_journeys_as_the_reading_that_asks_most_in_a_row(
    postgres_walked: Keeper, sent: list[int]
) -> None:
    """Of three lots their numbers and then their entries, two of them within a reading."""
    with acting(postgres_walked.book.engine) as connection:
        sent.clear()
        pair, last = abreast(connection, lambda: both(connection), entries_of(connection, CODES[2]))
    # And who is named in them, by two questions.
    assert sent == [3, 3, 1, 1]
    with postgres_walked.reading() as connection:
        assert [*pair, last] == [entries_of(connection, code)() for code in CODES]


def test_what_was_written_goes_with_what_is_asked_before_and_next(
    postgres_walked: Keeper, sent: list[int]
) -> None:
    with acting(postgres_walked.book.engine) as connection:
        assert queries.people(connection) == {"AB"}
        run(connection, "SELECT 1", ())
        sent.clear()
        who, _ = abreast(
            connection,
            lambda: queries.people(connection),
            lambda: foresee(connection, lambda foreseen: foreseen.asks(queries.material_codes)),
        )
        assert (who, sent) == ({"AB"}, [3])


@pytest.mark.parametrize("where", ["sqlite_walked", "postgres_walked"])
def test_the_first_that_would_fail_one_after_the_other_fails(
    where: str, request: pytest.FixtureRequest
) -> None:
    keeper: Keeper = request.getfixturevalue(where)

    def fails() -> int:
        raise KeyError

    with acting(keeper.book.engine) as connection:
        with pytest.raises(RefusedError) as raised:
            abreast(connection, entries_of(connection, "OE-009-9"), fails)
        assert raised.value.what == "The lot OE-009-9 is not in the book."
        with pytest.raises(KeyError):
            abreast(connection, entries_of(connection, CODES[0]), fails)
