"""What a driver of a database raises, in sentences.

Guarantees: what leaves the store is a `LedgerError`; of a number that no book can hold, a role that
may not, a time-out and bytes that are no text each says what it is.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from ledger.errors import InputError, LedgerError, MovedError, StorageError
from ledger.store.engine import patience

if TYPE_CHECKING:
    from sqlalchemy.exc import DBAPIError, OperationalError


@contextmanager
def storage_errors() -> Iterator[None]:
    """Turn what the database driver raises into a sentence."""
    try:
        yield
    except LedgerError:
        raise
    except Exception as error:
        if told := _sentence(error):
            raise told from error
        raise


def _sentence(error: Exception) -> LedgerError | None:
    """Return what is said of what a driver raised; None of anything else."""
    from sqlalchemy.exc import DBAPIError, OperationalError, StatementError

    if isinstance(error, DBAPIError) and _is_overtaken(error.orig):
        return MovedError(
            "Somebody else wrote in the book at the same moment.",
            "Nothing was recorded. Enter it again.",
        )
    # The narrower first: to SQLAlchemy it is a DBAPIError too.
    if isinstance(error, OperationalError):
        return _out_of_order(error)
    if isinstance(error, DBAPIError):
        return _refused(error)
    if not isinstance(error, StatementError):
        return None
    if isinstance(error.orig, OverflowError):
        return _too_large()
    if not isinstance(error.orig, UnicodeEncodeError):
        return None
    return InputError(
        "What was typed holds bytes that are no text in UTF-8.", "Type it again by hand."
    )


def _out_of_order(error: "OperationalError") -> StorageError:
    # The rest of the code says why (https://sqlite.org/rescode.html).
    if getattr(error.orig, "sqlite_errorcode", 0) & 0xFF == sqlite3.SQLITE_READONLY:
        return StorageError(
            "The book is write-protected: it can be read, and nothing can be recorded in it.",
            "Give yourself the right to write the file and its folder, or go on in a copy: "
            "pottle restore FILE --to PATH",
        )
    if told := patience.sentence(error.orig):
        return StorageError(*told)
    # A file has its errors of opening too; of a server no statement is known yet.
    if error.statement is None and not isinstance(error.orig, sqlite3.Error):
        return unanswered(error)
    return StorageError(
        f"The book could not be read or written: {cause(error)}.",
        "Check the disk, the permissions and that nothing else holds the book.",
    )


def _refused(error: "DBAPIError") -> LedgerError:
    if is_too_weak(error):
        return too_weak(error)
    if told := patience.sentence(error.orig):
        return StorageError(*told)
    # numeric_value_out_of_range in PostgreSQL's table of error codes.
    if getattr(error.orig, "sqlstate", None) == "22003":
        return _too_large()
    return StorageError(
        f"The book refused what was to be stored: {cause(error)}.",
        "Nothing was recorded. Run pottle verify to see whether the book is sound.",
    )


def _is_overtaken(cause: object) -> bool:
    """Return whether another wrote since a writer looked who takes its turn only to write.

    Then the number of its entry is taken, which a lot that it opens has too, and is stored before
    it; or, where the other changes the form of the book, each waits for what the other has.
    """
    # deadlock_detected and unique_violation in PostgreSQL's table of error codes.
    state = getattr(cause, "sqlstate", None)
    table = getattr(getattr(cause, "diag", None), "table_name", None)
    return state == "40P01" or (state == "23505" and table in ("entry", "lot"))


def unanswered(error: "OperationalError") -> StorageError:
    """Return the sentence of a server that could not be reached."""
    return StorageError(
        f"The server of the book did not answer: {cause(error)}.",
        "Check that it runs and that the address in POTTLE_LEDGER is right.",
    )


def _too_large() -> InputError:
    return InputError(
        "A number in this is larger than any that a book can hold.",
        "Look at the numbers again. Nothing was recorded.",
    )


def is_too_weak(error: "DBAPIError") -> bool:
    """Return whether a server refused because the role may not do what was asked of it."""
    # insufficient_privilege in PostgreSQL's table of error codes.
    return getattr(error.orig, "sqlstate", None) == "42501"


def too_weak(error: "DBAPIError") -> StorageError:
    """Return what is said then."""
    return StorageError(
        f"The role by which you came to the server may not do this: {cause(error)}.",
        "Nothing was recorded. Ask its keeper for SELECT and INSERT on every table of the book.",
    )


def cause(error: "DBAPIError | UnicodeDecodeError") -> str:
    """Return the first line of what the driver says, to stand within a sentence."""
    if isinstance(error, UnicodeDecodeError):  # its own words quote bytes that are no text
        return "what the database says of it is no text"
    lines = str(error.orig).strip().splitlines()
    return lines[0].rstrip(".") if lines else "the driver does not say why"
