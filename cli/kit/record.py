"""One verb of the book, called and answered.

Guarantees: the same path for every command that records; a verb is a function, so that a word it
does not take is seen before anything runs. Refuses: to load the book before a command runs.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Concatenate, ParamSpec

from cli.kit.call import Call

if TYPE_CHECKING:
    from ledger.service.desk.book import Book, How, Recorded

P = ParamSpec("P")


def record(
    call: Call,
    verb: "Callable[Concatenate[Book, How, P], Recorded]",
    *args: P.args,
    **words: P.kwargs,
) -> None:
    """Record with a verb of the book and print the answer."""
    from cli.kit.answer import recorded

    book = call.book()
    recorded(call, book, verb(book, call.how(), *args, **words))
