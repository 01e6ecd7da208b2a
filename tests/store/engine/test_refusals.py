"""What a driver raises is told in a sentence, the same on both engines."""

import pytest
from sqlalchemy import text

from ledger.errors import InputError
from ledger.store.engine.statements import ask
from tests.keeper import Keeper


@pytest.mark.parametrize("engine", ["sqlite_keeper", "postgres_keeper"])
def test_a_number_of_more_than_64_bits_is_told(engine: str, request: pytest.FixtureRequest) -> None:
    keeper: Keeper = request.getfixturevalue(engine)
    with pytest.raises(InputError) as raised, keeper.reading() as connection:
        ask(connection, "SELECT body FROM entry LIMIT :most", most=10**20)
    assert raised.value.problems == (
        (
            "A number in this is larger than any that a book can hold.",
            "Look at the numbers again. Nothing was recorded.",
        ),
    )


def test_any_other_fault_of_a_statement_keeps_its_own_words(sqlite_keeper: Keeper) -> None:
    with pytest.raises(Exception, match="no such table: nowhere") as raised:  # noqa: SIM117
        with sqlite_keeper.reading() as connection:
            connection.execute(text("SELECT 1 FROM nowhere"))
    assert raised.type.__name__ == "StorageError"
