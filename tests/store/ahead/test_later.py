"""What a correction asks of all that stands on an entry is foretold in the readers' own words."""

from functools import partial
from typing import Any

from ledger.store.ahead.later import Anew, Touched, foresee_entry, foresee_later
from ledger.store.engine import statements
from ledger.store.engine.acts import acting, foresee
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Question, turn_of
from ledger.store.read import dependents, queries, walk
from tests.keeper import Keeper

ANEW = Anew(("add", "finish", "bottle", "judge"), ("receipt",), most_acts=40, most_lots=200)
ESSENCE, SYRUP, BOTTLES = 15, 26, 32
OILED = 36
"""The entry that put oil into the essence."""


def answers(keeper: Keeper, questions: list[Question]) -> list[list[str]]:
    """Return the rows of questions, each asked by itself, in an order of their own."""
    with acting(keeper.book.engine) as connection:
        parts = [statements.part_of(question, connection) for question in questions]
        return [told(rows) for rows in statements.together(connection, parts)]


def told(rows: list[Any]) -> list[str]:
    return sorted(map(repr, map(tuple, rows)))


def foretell(foreseen: Foreseen) -> None:
    """Foretell what is asked of four entries, and of all that stands on a fifth."""
    for seq in (9, 23, 60, 65):
        foresee_entry(foreseen, seq)
    foresee_later(foreseen, Touched(OILED), ANEW)


def test_each_question_that_is_foretold_is_answered_as_by_itself(postgres_walked: Keeper) -> None:
    """Of the essence, of the syrup with it and its bottles, and of each later act in them."""
    with acting(postgres_walked.book.engine, foretell) as connection:
        turn = turn_of(connection)
        assert turn
        known = {**turn.asked, **turn.lasting}
        assert len(turn.of_many) > 100
    questions = []
    for statement, cells in known:
        assert isinstance(statement, str)
        assert isinstance(cells, frozenset)
        named = {name: list(it) if isinstance(it, tuple) else it for name, it in cells}
        questions.append(Question(statement, named))
    assert answers(postgres_walked, questions) == [told(rows) for rows in known.values()]


def test_what_is_foretold_anew_with_other_lots_knows_them_too(postgres_walked: Keeper) -> None:
    """Nothing of it is asked then, though it was found under the same numbers as before."""
    syrup_alone = Touched(OILED, codes=("OS-002-M",))
    with acting(postgres_walked.book.engine) as connection:
        for touched in (Touched(OILED), syrup_alone):
            foresee(connection, partial(foresee_later, touched=touched, anew=ANEW))
        turn = turn_of(connection)
        assert turn
        known = len(turn.asked) + len(turn.lasting)
        assert walk.forward(connection, SYRUP) == [SYRUP, BOTTLES]
        assert walk.forward(connection, ESSENCE) == [ESSENCE, SYRUP, BOTTLES]
        assert walk.all_behind(connection, [SYRUP, BOTTLES])[:2] == [SYRUP, BOTTLES]
        assert walk.all_behind(connection, [ESSENCE, SYRUP, BOTTLES])[0] == ESSENCE
        assert dependents.entries_touching(connection, BOTTLES)
        assert queries.chain(connection, BOTTLES)
        assert len(turn.asked) + len(turn.lasting) == known
