"""Details that are changed, lost or put back are found at their entry, on both engines."""

from collections.abc import Iterator

import pytest
from sqlalchemy import Connection

from ledger.store.audit.details import detail_faults, forgotten
from tests.keeper import Keeper


@pytest.fixture(params=["sqlite_walked", "postgres_walked"])
def walked(request: pytest.FixtureRequest) -> Keeper:
    keeper: Keeper = request.getfixturevalue(request.param)
    return keeper


@pytest.fixture
def book(walked: Keeper) -> Iterator[Connection]:
    """A book with its guards of details off, in a transaction that is given up."""
    with walked.book.engine.connect() as connection, connection.begin() as change:
        if connection.dialect.name == "sqlite":
            for act in ("update", "delete", "insert", "order"):
                connection.exec_driver_sql(f"DROP TRIGGER guard_details_{act}")
        else:
            connection.exec_driver_sql("ALTER TABLE details DISABLE TRIGGER USER")
        yield connection
        change.rollback()


def found(connection: Connection) -> list[tuple[int, str]]:
    last = connection.exec_driver_sql("SELECT MAX(seq) FROM entry").scalar_one()
    return list(detail_faults(connection, last))


def first(connection: Connection) -> int:
    return int(connection.exec_driver_sql("SELECT MIN(seq) FROM details").scalar_one())


def test_nothing_is_found_where_nothing_was_changed(book: Connection) -> None:
    assert found(book) == []


@pytest.mark.parametrize(
    "change",
    ["name = 'Key Bar'", "phone = '01 555 0100'", "name = NULL", f"salt = '{'0c' * 32}'"],
)
def test_any_change_is_told(change: str, book: Connection) -> None:
    seq = first(book)
    book.exec_driver_sql(f"UPDATE details SET {change} WHERE seq = {seq}")
    told = f"The details of entry {seq} are not those that the entry has a commitment to."
    assert found(book) == [(seq, told)]


def test_a_salt_that_is_none_is_told(book: Connection) -> None:
    seq = first(book)
    book.exec_driver_sql(f"UPDATE details SET salt = '{'zz' * 32}' WHERE seq = {seq}")
    assert [at for at, _ in found(book)] == [seq]


def test_details_that_nobody_forgot_are_missed(book: Connection) -> None:
    seq = first(book)
    book.exec_driver_sql(f"DELETE FROM details WHERE seq = {seq}")
    told = f"The details of entry {seq} are lost, and no entry says that they were forgotten."
    assert found(book) == [(seq, told)]


def test_details_of_an_entry_that_has_none_are_told(book: Connection) -> None:
    book.exec_driver_sql(f"INSERT INTO details (seq, salt, name) VALUES (1, '{'0c' * 32}', 'Bo')")
    told = "The table details has a row for entry 1 that the entry does not say."
    assert found(book) == [(1, told)]


def test_what_was_forgotten_is_counted_and_may_not_come_back(book: Connection) -> None:
    seq = first(book)
    (erased,) = forgotten(book)
    body = book.exec_driver_sql("SELECT body FROM entry WHERE kind = 'forget'").scalar_one()
    said = body.replace(f'"entry":{erased}', f'"entry":{seq}')
    if book.dialect.name == "sqlite":
        book.exec_driver_sql("DROP TRIGGER guard_entry_update")
    else:
        book.exec_driver_sql("ALTER TABLE entry DISABLE TRIGGER USER")
    book.exec_driver_sql(f"UPDATE entry SET body = '{said}' WHERE kind = 'forget'")
    assert forgotten(book) == {seq}
    told = f"The details of entry {seq} were forgotten, and somebody put them back."
    missed = f"The details of entry {erased} are lost, and no entry says that they were forgotten."
    assert found(book) == [(seq, told), (erased, missed)]
    book.exec_driver_sql(f"DELETE FROM details WHERE seq = {seq}")
    assert found(book) == [(erased, missed)]
