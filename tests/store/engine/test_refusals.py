"""What a driver raises is told in a sentence, the same on both engines."""

import sqlite3
from types import SimpleNamespace

import pytest
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError, IntegrityError, OperationalError, StatementError

from ledger.errors import InputError, LedgerError, MovedError, StorageError
from ledger.store.engine.refusals import cause, storage_errors
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


class DriverError(Exception):
    """What the driver of a server raises, with its code."""

    def __init__(
        self, sqlstate: str = "", says: str = "it is gone.\nAnd more.", table: str = ""
    ) -> None:
        super().__init__(says)
        self.sqlstate = sqlstate
        self.diag = SimpleNamespace(table_name=table)


def read_only() -> sqlite3.OperationalError:
    error = sqlite3.OperationalError("attempt to write a readonly database")
    error.sqlite_errorcode = sqlite3.SQLITE_READONLY_DBMOVED
    return error


READ = "SELECT 1"
LATE = (
    "Another has been writing in the book for too long, and it was waited for in vain.",
    "Nothing was recorded. Try again; a writer that stopped is put out by the server.",
)
OVERTAKEN = (
    "Somebody else wrote in the book at the same moment.",
    "Nothing was recorded. Enter it again.",
)
NEITHER = "Check the disk, the permissions and that nothing else holds the book."
TOO_LARGE = (
    "A number in this is larger than any that a book can hold.",
    "Look at the numbers again. Nothing was recorded.",
)
SENTENCES: dict[str, tuple[Exception, type[LedgerError], tuple[str, str]]] = {
    "a number that is taken": (
        IntegrityError(READ, None, DriverError("23505", table="entry")),
        MovedError,
        OVERTAKEN,
    ),
    "a lot's number that is taken": (
        IntegrityError(READ, None, DriverError("23505", table="lot")),
        MovedError,
        OVERTAKEN,
    ),
    "two who wait for each other": (
        OperationalError(READ, None, DriverError("40P01")),
        MovedError,
        OVERTAKEN,
    ),
    "something else that is there already": (
        IntegrityError(READ, None, DriverError("23505", table="tree")),
        StorageError,
        (
            "The book refused what was to be stored: it is gone.",
            "Nothing was recorded. Run pottle verify to see whether the book is sound.",
        ),
    ),
    "a file that is write-protected": (
        OperationalError(READ, None, read_only()),
        StorageError,
        (
            "The book is write-protected: it can be read, and nothing can be recorded in it.",
            "Give yourself the right to write the file and its folder, or go on in a copy: "
            "pottle restore FILE --to PATH",
        ),
    ),
    "a time-out of a statement": (
        OperationalError(READ, None, DriverError("55P03")),
        StorageError,
        LATE,
    ),
    "a time-out otherwise told": (DBAPIError(READ, None, DriverError("55P03")), StorageError, LATE),
    "a file that cannot be opened": (
        OperationalError(None, None, sqlite3.OperationalError("unable to open database file")),
        StorageError,
        ("The book could not be read or written: unable to open database file.", NEITHER),
    ),
    "a server that is not there": (
        OperationalError(None, None, DriverError()),
        StorageError,
        (
            "The server of the book did not answer: it is gone.",
            "Check that it runs and that the address in POTTLE_LEDGER is right.",
        ),
    ),
    "a server that goes away": (
        OperationalError(READ, None, DriverError()),
        StorageError,
        ("The book could not be read or written: it is gone.", NEITHER),
    ),
    "a role that may not": (
        DBAPIError(READ, None, DriverError("42501", "permission denied for table entry")),
        StorageError,
        (
            "The role by which you came to the server may not do this: permission denied for "
            "table entry.",
            "Nothing was recorded. Ask its keeper for SELECT and INSERT on every table of the "
            "book.",
        ),
    ),
    "a number of a server": (DBAPIError(READ, None, DriverError("22003")), InputError, TOO_LARGE),
    "a number of a file": (StatementError("", READ, None, OverflowError()), InputError, TOO_LARGE),
    "what nobody knows": (
        DBAPIError(READ, None, DriverError(says="")),
        StorageError,
        (
            "The book refused what was to be stored: the driver does not say why.",
            "Nothing was recorded. Run pottle verify to see whether the book is sound.",
        ),
    ),
    "bytes that are no text": (
        StatementError("", READ, None, UnicodeEncodeError("utf-8", "\udc80", 0, 1, "surrogates")),
        InputError,
        ("What was typed holds bytes that are no text in UTF-8.", "Type it again by hand."),
    ),
}


@pytest.mark.parametrize(("error", "kind", "problem"), SENTENCES.values(), ids=list(SENTENCES))
def test_each_fault_of_a_driver_has_its_sentence(
    error: Exception, kind: type[LedgerError], problem: tuple[str, str]
) -> None:
    with pytest.raises(kind) as raised, storage_errors():
        raise error
    assert (type(raised.value), raised.value.problems) == (kind, (problem,))


@pytest.mark.parametrize("error", [KeyError("x"), StatementError("", READ, None, KeyError("x"))])
def test_what_no_driver_raised_goes_on_as_it_is(error: Exception) -> None:
    with pytest.raises(type(error)) as raised, storage_errors():
        raise error
    assert raised.value is error


def test_bytes_that_are_no_text_are_not_quoted() -> None:
    no_text = UnicodeDecodeError("utf-8", b"\x80", 0, 1, "invalid start byte")
    assert cause(no_text) == "what the database says of it is no text"
