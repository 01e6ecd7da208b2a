"""Within one act nothing is asked twice, and what an act asks does not grow unseen."""

import pytest

from ledger.store.engine.statements import ask_one, run
from ledger.store.engine.turn import Found, Heard, Question, Rows, Turn, taking, turn_of
from tests.heard import heard
from tests.keeper import Keeper

COUNT = "SELECT COUNT(*) FROM person_key WHERE seq > :seq"


def once_each(told: list[str]) -> list[str]:
    """Return statements without those that guards run, told by the words of what they guard.

    Nor are rows of the tree among them: how many an entry completes hangs on its number.
    """
    apart = [one for place, one in enumerate(told) if place == 0 or one != told[place - 1]]
    return [one for one in apart if not one.startswith('INSERT INTO "tree"')]


MOST = {
    "add": (24, {"lot": "OE-001-5", "source": "NS-001-J", "amount": "3 mL"}),
    "look": (14, {"lot": "OE-001-5", "grade": "bright"}),
    "measure": (17, {"lot": "OE-001-5", "what": "brix", "reading": "60"}),
    "note": (7, {"text": "Quiet."}),
}
"""How many statements an act may be, its own two ends among them, and its words."""


@pytest.mark.parametrize("verb", MOST)
def test_an_act_is_so_many_statements_and_none_of_them_twice(
    verb: str, sqlite_walked: Keeper
) -> None:
    most, words = MOST[verb]
    with heard(sqlite_walked.book) as told:
        sqlite_walked.do(verb, **words)
    asked = once_each(told)
    assert [one for one in asked if asked.count(one) > 1] == []
    assert len(asked) == most


def test_what_is_written_is_seen_by_what_is_asked_after_it(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.book.writing() as connection:
        assert ask_one(connection, COUNT, seq=0) == 1
        run(connection, "INSERT INTO person_key VALUES (?, ?)", ("CD", 9))
        assert ask_one(connection, COUNT, seq=0) == 2
        connection.rollback()


def test_outside_of_an_act_nothing_is_remembered(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.reading() as connection:
        assert ask_one(connection, COUNT, seq=0) == 1
        assert turn_of(connection) is None
    sqlite_keeper.do("person", initials="CD", name="Cara Dale")
    with sqlite_keeper.reading() as connection:
        assert ask_one(connection, COUNT, seq=0) == 2


def test_what_an_act_knows_already_is_taken_and_else_it_begins_with_nothing(
    sqlite_keeper: Keeper,
) -> None:
    known = Turn()
    with sqlite_keeper.reading() as connection:
        with taking(connection, known) as turn:
            assert turn is turn_of(connection) is known
        with taking(connection) as turn:
            assert turn is turn_of(connection) is not known
        assert turn_of(connection) is None


def test_what_is_heard_is_by_itself_unless_it_is_said_what_asks_for_its_answer() -> None:
    heard_alone = Heard(Question("SELECT 1", {}))
    assert (heard_alone.found, heard_alone.reader) == (None, None)
    assert not heard_alone.is_kept_in_rows
    assert not Heard(heard_alone.asked, Found(1, "BIGINT")).is_kept_in_rows
    assert (heard_alone.asked.is_binary, heard_alone.asked.lasts) == (False, False)


def test_what_a_server_found_is_read_back_by_its_number_as_what_it_is() -> None:
    """PostgreSQL's manual, "Configuration Settings Functions": what is not set is empty or NULL."""
    kept = "NULLIF(current_setting('pottle.found3', true), '')"
    rows = Rows(3, ("lot",), {"lot": "BIGINT", "code": "TEXT"})
    assert rows.told == (
        f"jsonb_to_recordset(CAST(COALESCE({kept}, '[]') AS JSONB)) AS each(lot BIGINT, code TEXT)"
    )
    assert Found(3, "BIGINT[]").told == f"CAST({kept} AS BIGINT[])"
    assert Found(3, "BIGINT", rows, "lot").told == "each.lot"


def test_a_question_is_asked_for_each_of_the_rows_of_its_cells_once() -> None:
    rows = Rows(3, ("lot",), {"lot": "BIGINT"})
    alone, cell = Found(4, "BIGINT"), Found(3, "BIGINT", rows, "lot")
    assert Question("", {"lot": cell, "lots": [cell, alone], "at": "now"}).keys == (cell,)
    assert Question("", {"lot": cell, "rows": rows}).keys == ()
    asked = Question("", {"lot": 9})
    assert [Heard(asked, found).is_kept_in_rows for found in (rows, cell, alone)] == [
        True,
        True,
        False,
    ]
    assert Question("", {"lots": [9, 8]}).key == Question("", {"lots": (9, 8)}).key
