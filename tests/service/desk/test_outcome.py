"""Of a commit that nobody answered for, the book itself is asked, and what it says is told."""

import time
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from ledger.errors import StorageError
from ledger.service.desk import book as desk_book
from ledger.service.desk import outcome
from ledger.store.engine.acts import Foretell, acting
from ledger.store.engine.connections import Connection, Engine
from tests.keeper import Keeper

GONE = StorageError("The server went away.", "Look at it.")


def fail(
    monkeypatch: pytest.MonkeyPatch, error: BaseException, *, is_made: bool, turns: int = 1
) -> None:
    """Let the next writing transactions end in an error, after their commit or before it."""
    left = [turns]

    @contextmanager
    def failing(
        engine: Engine, foretell: Foretell | None = None, *, in_turn: bool = True
    ) -> Iterator[Connection]:
        left[0] -= 1
        with acting(engine, foretell, in_turn=in_turn) as connection:
            yield connection
            if left[0] >= 0 and not is_made:
                raise error
        if left[0] >= 0:
            raise error

    monkeypatch.setattr(desk_book, "acting", failing)


def test_a_commit_whose_answer_was_lost_is_told_as_recorded(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    fail(monkeypatch, GONE, is_made=True)
    done = bench.do("note", text="Here.")
    assert bench.book.recorded[-1] == done.seq == len(bench.bodies())


def test_a_commit_that_was_not_made_is_told_as_the_error_it_was(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = bench.bodies()
    fail(monkeypatch, GONE, is_made=False)
    with pytest.raises(StorageError) as raised:
        bench.do("note", text="Here.")
    assert raised.value is GONE
    assert bench.bodies() == before


def test_where_the_book_does_not_answer_it_is_not_known(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    paused: list[float] = []
    monkeypatch.setattr(time, "sleep", paused.append)
    number = len(bench.bodies()) + 1
    fail(monkeypatch, GONE, is_made=True, turns=1 + outcome.TRIES)
    with pytest.raises(StorageError) as raised:
        bench.do("note", text="Here.")
    assert raised.value.problems == (
        (
            f"The server went away. Whether entry {number} was recorded is not known, for the book "
            "does not answer.",
            f"When it answers again, pottle journal --entry {number} says whether it is this one; "
            "enter it again only if it is not.",
        ),
    )
    assert paused == [1.0, 1.0]


def test_a_key_that_breaks_off_the_commit_leaves_known_what_stands(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = list(bench.book.recorded)
    fail(monkeypatch, KeyboardInterrupt(), is_made=True)
    with pytest.raises(KeyboardInterrupt):
        bench.do("note", text="Here.")
    assert bench.book.recorded == [*before, len(bench.bodies())]
