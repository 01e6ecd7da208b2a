"""What was foretold is answered at once, under the very question that is asked later."""

from sqlalchemy import Connection

from ledger.store.engine.acts import acting, foresee
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.statements import ask, ask_column, ask_for, ask_one, run
from ledger.store.engine.turn import turn_of
from tests.keeper import Keeper

LAST = "SELECT MAX(seq) FROM entry"
KIND = "SELECT kind FROM entry WHERE seq = :seq"


def kind_of(connection: Connection, seq: int) -> str:
    """Ask of which kind an entry is."""
    return str(ask_one(connection, KIND, seq=seq))


def kinds_of(connection: Connection, entries: list[int]) -> list[str]:
    """Ask of which kinds entries are."""
    told = "SELECT e.kind FROM {wanted} w JOIN entry e ON e.seq = w.lot ORDER BY e.seq"
    return [kind for (kind,) in ask_for(connection, told, entries)]


def foretell(foreseen: Foreseen) -> None:
    last = foreseen.finds("BIGINT", LAST)
    foreseen.asks(kind_of, last)
    foreseen.asks(kinds_of, [last])
    foreseen.asks(kinds_of, foreseen.finds("BIGINT[]", "SELECT array_agg(seq) FROM entry"))
    foreseen.asks_for(KIND, seq=1)
    nobody = foreseen.finds("BIGINT", "SELECT seq FROM entry WHERE seq < 0")
    foreseen.asks(kind_of, nobody)


def known(connection: Connection) -> int:
    """Return how many answers the act of a connection knows."""
    turn = turn_of(connection)
    assert turn
    return len(turn.asked)


def test_one_question_finds_the_value_of_another_and_the_reader_is_not_asked_again(
    postgres_keeper: Keeper,
) -> None:
    last, *before = len(postgres_keeper.bodies()), *range(1, len(postgres_keeper.bodies()))
    with acting(postgres_keeper.book.engine, foretell) as connection:
        answered = known(connection)
        assert kind_of(connection, last) == "material"
        assert kind_of(connection, 1) == "house"
        assert kinds_of(connection, [last]) == ["material"]
        assert len(kinds_of(connection, [*before, last])) == last
        assert known(connection) == answered
        assert kind_of(connection, 2) == "person"  # which nobody foretold
        assert known(connection) == answered + 1


def test_a_further_act_of_a_transaction_is_foretold_what_was_written_before_it(
    postgres_keeper: Keeper,
) -> None:
    with postgres_keeper.book.writing() as connection:
        foresee(connection, foretell)
        assert known(connection) > 0
    with postgres_keeper.book.writing(foretell) as connection:
        assert kind_of(connection, 1) == "house"


def by_initials(connection: Connection, kind: str) -> list[str]:
    """Ask who wrote entries of a kind."""
    told = "SELECT by FROM entry WHERE kind = :kind AND by IS NOT NULL ORDER BY seq"
    return [by for (by,) in ask(connection, told, kind=kind)]


def test_one_question_answers_many_of_a_reader(postgres_keeper: Keeper) -> None:
    with acting(postgres_keeper.book.engine) as connection:
        every = "SELECT kind, by FROM entry WHERE by IS NOT NULL ORDER BY kind, seq"
        foresee(connection, lambda foreseen: foreseen.asks_each(by_initials, every))
        answered = known(connection)
        assert by_initials(connection, "person") == ["AB"]
        assert by_initials(connection, "material") == ["AB"] * 6
        assert known(connection) == answered


def foretell_each(foreseen: Foreseen) -> None:
    number, by = foreseen.finds_rows(
        {"number": "BIGINT", "by": "TEXT"}, "SELECT seq, by FROM entry WHERE seq < :most", most=5
    )
    foreseen.asks(kind_of, number)
    foreseen.asks(kinds_of, [number])
    up_to = "SELECT array_agg(seq ORDER BY seq) FROM entry WHERE seq <= :number"
    foreseen.asks(kinds_of, foreseen.finds("BIGINT[]", up_to, number=number))
    foreseen.asks(by_initials, foreseen.finds("TEXT", KIND, seq=number))
    of_all = "SELECT array_agg(each.number) FROM :rows WHERE :by IS NOT NULL"
    foreseen.asks(kinds_of, foreseen.finds("BIGINT[]", of_all, rows=number.rows, by=by))
    (nothing,) = foreseen.finds_rows({"seq": "BIGINT"}, "SELECT seq FROM entry WHERE seq < 0")
    foreseen.asks(kind_of, foreseen.finds("BIGINT", "SELECT CAST(:seq AS BIGINT)", seq=nothing))


def test_a_question_is_asked_for_each_of_the_rows_that_another_finds(
    postgres_keeper: Keeper,
) -> None:
    with acting(postgres_keeper.book.engine, foretell_each) as connection:
        answered = known(connection)
        kinds = [kind_of(connection, number) for number in range(1, 5)]
        assert kinds == ["house", "person", "material", "material"]
        assert [kinds_of(connection, [number])[0] for number in range(1, 5)] == kinds
        assert [kinds_of(connection, [*range(1, last + 1)]) for last in (1, 4)] == [
            kinds[:1],
            kinds,
        ]
        assert kinds_of(connection, [2, 3, 4]) == kinds[1:]  # of which it is said who wrote them
        assert by_initials(connection, "house") == []
        assert by_initials(connection, "person") == ["AB"]
        assert known(connection) == answered


def numbers_of(connection: Connection, kind: str) -> list[int]:
    """Ask which entries are of a kind."""
    return ask_column(
        connection, "SELECT seq FROM entry WHERE kind = :kind ORDER BY seq", kind=kind
    )


def foretell_by_readers(foreseen: Foreseen) -> None:
    last = foreseen.finds("BIGINT", LAST)
    foreseen.asks(by_initials, foreseen.finds_by("TEXT", kind_of, last))
    (number,) = foreseen.finds_rows({"number": "BIGINT"}, "SELECT seq FROM entry WHERE seq < 3")
    foreseen.asks(by_initials, foreseen.finds_by("TEXT", kind_of, number))
    foreseen.asks(kinds_of, foreseen.finds_all("BIGINT[]", numbers_of, "material"))


def test_what_a_reader_will_answer_is_found_for_others_and_told_where_it_is_asked_for_rows(
    postgres_keeper: Keeper,
) -> None:
    with acting(postgres_keeper.book.engine, foretell_by_readers) as connection:
        answered = known(connection)
        assert [by_initials(connection, kind) for kind in ("material", "person", "house")] == [
            *(["AB"] * 6, ["AB"], [])
        ]
        assert [kind_of(connection, number) for number in (1, 2)] == ["house", "person"]
        assert kinds_of(connection, [*range(3, 9)]) == ["material"] * 6
        assert known(connection) == answered


def test_what_is_foretold_after_something_was_written_goes_with_all_that_was_asked_before(
    postgres_keeper: Keeper,
) -> None:
    with acting(postgres_keeper.book.engine, foretell_each) as connection:
        assert kind_of(connection, 5) == "material"  # which nobody foretold
        run(connection, "SELECT 1", ())
        assert known(connection) == 0
        foresee(connection, foretell_each)
        answered = known(connection)
        assert [kind_of(connection, number) for number in (1, 5)] == ["house", "material"]
        assert known(connection) == answered


def test_of_a_file_nothing_is_foretold(sqlite_keeper: Keeper) -> None:
    with acting(sqlite_keeper.book.engine, foretell) as connection:
        foresee(connection, foretell)
        assert known(connection) == 0
        assert ask(connection, LAST) == [(len(sqlite_keeper.bodies()),)]


def test_what_is_foretold_about_something_is_first_once(postgres_keeper: Keeper) -> None:
    firsts: list[bool] = []

    def about(foreseen: Foreseen) -> None:
        firsts.extend(foreseen.is_first("lot", number) for number in (1, 2, 1))

    with acting(postgres_keeper.book.engine, about):
        pass
    assert firsts[:3] == [True, True, False]
