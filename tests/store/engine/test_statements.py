"""The short way from a statement to its rows, alike on every engine."""

from typing import Any, cast

import pytest
from sqlalchemy.exc import DBAPIError

from ledger.store.engine.statements import (
    BY_INDEX,
    ask,
    ask_column,
    ask_for,
    ask_lots,
    ask_once,
    ask_one,
    chunks,
    go_by_index,
    run,
    together,
)
from ledger.store.engine.turn import Found, Part, Question, UnknownError, taking
from tests.keeper import Keeper


@pytest.fixture(params=["sqlite_keeper", "postgres_keeper"])
def keeper(request: pytest.FixtureRequest) -> Keeper:
    """A book with its people and materials, on each engine."""
    found: Keeper = request.getfixturevalue(request.param)
    return found


def test_values_are_named_and_a_per_cent_sign_is_one(keeper: Keeper) -> None:
    with keeper.reading() as connection:
        found = ask(connection, "SELECT seq FROM entry WHERE kind = :kind", kind="person")
        assert found == [(2,)]
        like = "SELECT count(*) FROM entry WHERE kind LIKE 'mat%' AND seq > :seq"
        assert ask_one(connection, like, seq=3) == 5
        assert ask_one(connection, "SELECT seq FROM entry WHERE seq = :seq", seq=99) is None
        column = ask_column(
            connection, "SELECT seq FROM entry WHERE seq < :end ORDER BY seq", end=4
        )
    assert column == [1, 2, 3]


def test_lots_are_listed_in_their_order_and_none_as_an_empty_list(keeper: Keeper) -> None:
    codes = [keeper.opens("receive", material="water", amount="1L") for _ in range(3)]
    assert len(codes) == 3
    with keeper.reading() as connection:
        statement = "SELECT id AS lot FROM lot WHERE id > :after ORDER BY id DESC"
        assert ask_lots(connection, statement, after=9) == [11, 10]
        assert ask_lots(connection, statement, after=99) == []


def test_numbers_asked_for_are_those_that_are_answered(keeper: Keeper) -> None:
    statement = "SELECT w.lot FROM {wanted} w JOIN entry e ON e.seq = w.lot ORDER BY w.lot"
    with keeper.reading() as connection:
        assert [lot for (lot,) in ask_for(connection, statement, [3, 1, 99])] == [1, 3]
        assert ask_for(connection, statement, []) == []


def test_what_the_driver_raises_is_raised_as_elsewhere_in_the_store(keeper: Keeper) -> None:
    with keeper.reading() as connection, pytest.raises(DBAPIError):
        ask(connection, "SELECT nothing FROM nowhere")


def test_what_goes_together_and_fails_is_raised_with_all_that_was_said(
    postgres_keeper: Keeper,
) -> None:
    with postgres_keeper.reading() as connection:
        parts = [Part("SELECT 1"), Part("SELECT 1 / 0")]
        with pytest.raises(DBAPIError, match="division by zero") as raised:
            together(connection, parts)
    assert raised.value.statement == "SELECT 1; SELECT 1 / 0"


def test_numbers_are_parted_and_none_is_lost() -> None:
    assert chunks(list(range(5)), 2) == [[0, 1], [2, 3], [4]]
    assert chunks([]) == []


def test_what_an_act_wrote_is_seen_by_what_it_asks_next_and_by_what_it_asked_before(
    keeper: Keeper,
) -> None:
    mark = "?" if "://" not in keeper.book.where else "%s"
    count = "SELECT COUNT(*) FROM person_key WHERE seq > :seq"
    with keeper.book.writing() as connection:
        assert ask_one(connection, count, seq=0) == 1
        run(connection, f"INSERT INTO person_key VALUES ({mark}, {mark})", ("CD", 9))
        assert ask_one(connection, count, seq=0) == 2
        assert ask_column(connection, "SELECT initials FROM person_key ORDER BY seq") == [
            "AB",
            "CD",
        ]
        assert ask(connection, "SELECT seq FROM person_key WHERE seq > :seq", seq=99) == []
        connection.rollback()


def test_what_is_still_to_be_found_is_one_part() -> None:
    numbers = Found(3, "BIGINT[]")
    parts: list[Any] = [*chunks(cast("Any", numbers))]
    assert parts == [numbers]


def test_a_server_is_told_what_not_to_try_until_a_transaction_ends(postgres_keeper: Keeper) -> None:
    def told() -> set[str]:
        return {ask_one(connection, f"SHOW {name}") for name in BY_INDEX}

    with postgres_keeper.reading() as connection:
        assert told() != {"off"}
        go_by_index(connection)
        assert told() == {"off"}
    with postgres_keeper.reading() as connection:
        assert told() != {"off"}
        go_by_index(connection)
        assert told() == {"off"}


def test_an_act_far_away_keeps_in_mind_what_it_will_ask_again_after_it_wrote(
    sqlite_keeper: Keeper,
) -> None:
    """Not what lasts once it is there, nor what was foretold for each of many."""
    with sqlite_keeper.reading() as connection, taking(connection) as turn:
        turn.is_far = True
        asked = {
            "alone": Question("SELECT 1", {}),
            "lasting": Question("SELECT 2", {}, lasts=True),
            "not there yet": Question("SELECT 3", {}, lasts=True),
            "of many": Question("SELECT 4", {}),
        }
        for why, question in asked.items():
            turn.learn(question.key, question, [] if why == "not there yet" else [(1,)])
        turn.of_many.add(asked["of many"].key)
        for question in asked.values():
            (ask_once if question.lasts else ask)(connection, question.statement)
    assert [*turn.used.values()] == [asked["alone"], asked["not there yet"]]


def test_a_question_that_is_only_to_be_heard_has_no_answer(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.reading() as connection, taking(connection) as turn:
        turn.heard = []
        with pytest.raises(UnknownError):
            ask_once(connection, "SELECT :one", one=1)
    assert turn.heard == [Question("SELECT :one", {"one": 1}, lasts=True)]
