"""Statements that go to a server together are one round trip."""

import psycopg
import pytest

from ledger.store.engine.journey import answers
from ledger.store.engine.turn import Part
from tests.benchmarks.slow_line import slow_line, through
from tests.conftest import Server

DELAY_S = 0.05


def test_what_is_asked_together_is_said_at_once_and_answered_each_with_its_rows(
    server: Server,
) -> None:
    with slow_line(server, DELAY_S) as line:
        where = through(line, server.where("postgres")).replace("+psycopg", "")
        with psycopg.connect(where, autocommit=True) as connection:
            before, said = line.trips, line.said
            parts = [
                Part("BEGIN"),
                Part("SELECT %(n)s::int + 1", {"n": 1}),
                Part("SELECT ARRAY[1, 2]::bigint[]", is_binary=True),
                Part("SELECT 3 WHERE false"),
                Part("COMMIT"),
            ]
            assert answers(connection, parts) == [[], [(2,)], [([1, 2],)], [], []]
            assert (line.trips - before, line.said - said) == (1, 1)


def test_after_one_that_failed_none_is_run_and_its_error_is_told(server: Server) -> None:
    with psycopg.connect(server.address, autocommit=True) as connection:
        kept = Part("CREATE TEMP TABLE kept (n int)")
        with pytest.raises(psycopg.errors.DivisionByZero):
            answers(connection, [Part("BEGIN"), kept, Part("SELECT 1 / 0"), Part("COMMIT")])
        connection.rollback()
        assert answers(connection, [Part("SELECT to_regclass('kept')")]) == [[(None,)]]
