"""What must hold of every reader, whatever it is given.

Guarantees: a law that does not hold raises `BrokenLawError`, which says which; anything else that a
reader raises, but for the errors of the book, goes on its way and is a finding too.
"""

from collections.abc import Callable
from typing import TypeVar

from ledger.errors import LedgerError

ValueT = TypeVar("ValueT")


class BrokenLawError(AssertionError):
    """A law that does not hold."""


def holds(is_so: bool, law: str, *shown: object) -> None:
    """Raise when a law does not hold, showing what it was about."""
    if not is_so:
        raise BrokenLawError(f"{law}: {', '.join(map(repr, shown))}")


def same(law: str, got: object, expected: object) -> None:
    """Raise when two things differ that a law says are the same."""
    holds(got == expected, law, got, expected)


def check_sentence(what: str) -> None:
    """A sentence ends as one and can be printed: no control, no line end, nothing hidden."""
    holds(what.endswith((".", "?")), "a problem is a whole sentence", what)
    holds(what.isprintable(), "a sentence is printable", what)


def check_error(error: LedgerError) -> None:
    """An error tells at least one problem, each in a sentence, and what to do in plain letters."""
    holds(bool(error.problems), "an error tells a problem", error)
    for what, todo in error.problems:
        check_sentence(what)
        holds(todo.isprintable(), "what to do is printable", todo)


def attempt(reader: Callable[[], ValueT]) -> ValueT | None:
    """Return what a reader reads, or None when it refuses as it promises."""
    try:
        return reader()
    except LedgerError as error:
        check_error(error)
        return None


def text_of(data: bytes) -> str:
    """Return bytes as a command gets them: what is not UTF-8 becomes half characters."""
    return data.decode("utf-8", "surrogateescape")
