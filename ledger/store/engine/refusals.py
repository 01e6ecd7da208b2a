"""What a driver of a database raises, in sentences.

Guarantees: what leaves the store is a `LedgerError`; of a number that no book can hold, a role that
may not, a time-out and bytes that are no text each says what it is.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, OperationalError, StatementError

from ledger.errors import InputError, StorageError
from ledger.store.engine import patience


@contextmanager
def storage_errors() -> Iterator[None]:
    """Turn what the database driver raises into a sentence."""
    try:
        yield
    # The narrower first: to SQLAlchemy it is a DBAPIError too.
    except OperationalError as error:
        # The rest of the code says why (https://sqlite.org/rescode.html).
        if getattr(error.orig, "sqlite_errorcode", 0) & 0xFF == sqlite3.SQLITE_READONLY:
            raise StorageError(
                "The book is write-protected: it can be read, and nothing can be recorded in it.",
                "Give yourself the right to write the file and its folder, or go on in a copy: "
                "pottle restore FILE --to PATH",
            ) from error
        if told := patience.sentence(error.orig):
            raise StorageError(*told) from error
        # A file has its errors of opening too; of a server no statement is known yet.
        if error.statement is None and not isinstance(error.orig, sqlite3.Error):
            raise unanswered(error) from error
        raise StorageError(
            f"The book could not be read or written: {cause(error)}.",
            "Check the disk, the permissions and that nothing else holds the book.",
        ) from error
    except DBAPIError as error:
        if is_too_weak(error):
            raise too_weak(error) from error
        if told := patience.sentence(error.orig):
            raise StorageError(*told) from error
        # numeric_value_out_of_range in PostgreSQL's table of error codes.
        if getattr(error.orig, "sqlstate", None) == "22003":
            raise _too_large() from error
        raise StorageError(
            f"The book refused what was to be stored: {cause(error)}.",
            "Nothing was recorded. Run pottle verify to see whether the book is sound.",
        ) from error
    except StatementError as error:
        if isinstance(error.orig, OverflowError):
            raise _too_large() from error
        if not isinstance(error.orig, UnicodeEncodeError):
            raise
        raise InputError(
            "What was typed holds bytes that are no text in UTF-8.", "Type it again by hand."
        ) from error


def unanswered(error: OperationalError) -> StorageError:
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


def is_too_weak(error: DBAPIError) -> bool:
    """Return whether a server refused because the role may not do what was asked of it."""
    # insufficient_privilege in PostgreSQL's table of error codes.
    return getattr(error.orig, "sqlstate", None) == "42501"


def too_weak(error: DBAPIError) -> StorageError:
    """Return what is said then."""
    return StorageError(
        f"The role by which you came to the server may not do this: {cause(error)}.",
        "Nothing was recorded. Ask its keeper for SELECT and INSERT on every table of the book.",
    )


def cause(error: DBAPIError | UnicodeDecodeError) -> str:
    """Return the first line of what the driver says, to stand within a sentence."""
    if isinstance(error, UnicodeDecodeError):  # its own words quote bytes that are no text
        return "what the database says of it is no text"
    lines = str(error.orig).strip().splitlines()
    return lines[0].rstrip(".") if lines else "the driver does not say why"
