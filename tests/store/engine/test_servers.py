"""A server is called once and the call kept, until it hangs up or the book is closed."""

from sqlalchemy import text

from tests.conftest import Server
from tests.keeper import Keeper

PID = text("SELECT pg_backend_pid()")


def test_the_next_act_goes_on_by_the_same_call(postgres_keeper: Keeper) -> None:
    told = []
    for _ in range(2):
        with postgres_keeper.book.writing() as connection:
            told.append(connection.execute(PID).scalar_one())
        with postgres_keeper.reading() as connection:
            told.append(connection.execute(PID).scalar_one())
    assert len(set(told)) == 1


def test_where_the_server_has_hung_up_it_is_called_again(
    postgres_keeper: Keeper, server: Server
) -> None:
    with postgres_keeper.reading() as connection:
        was = connection.execute(PID).scalar_one()
    server.run(f"SELECT pg_terminate_backend({was}, 5000)")
    done = postgres_keeper.do("note", text="Still here.")
    assert len(postgres_keeper.bodies()) == done.seq
