"""What one act asked the book so far, so that nothing is asked twice in one transaction.

Guarantees: an answer is given again only while the act has written nothing since; what never
changes in a book, such as a lot's number, is known to the end of the act. Refuses: to outlast the
transaction, in which nobody else can write or be seen to.
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import Connection

Asked = tuple[object, ...]
"""A statement with its values."""
_TURN = "turn"


@dataclass(slots=True)
class Turn:
    """What an act knows of the book."""

    asked: dict[Asked, list[Any]] = field(default_factory=dict)
    """The answers, each by its question."""
    known: dict[object, Any] = field(default_factory=dict)
    """What it knows of the end of the book and of what never changes."""


@contextmanager
def taking(connection: Connection) -> Iterator[Turn]:
    """Let what is asked by a connection be remembered for as long as the block runs."""
    about = connection.info  # of a connection that was lost nothing can be asked at the end
    turn = about[_TURN] = Turn()
    try:
        yield turn
    finally:
        about.pop(_TURN, None)


def turn_of(connection: Connection) -> Turn | None:
    """Return what the act of a connection knows, or None where none goes on."""
    found: Turn | None = connection.info.get(_TURN)
    return found


def written(connection: Connection) -> None:
    """Forget the answers of the act: what it writes may have them otherwise."""
    if turn := turn_of(connection):
        turn.asked.clear()


def question(statement: str, cells: Mapping[str, object]) -> Asked:
    """Return a statement with its values, as an answer to it is found again."""
    return (
        statement,
        *(
            (name, tuple(value) if isinstance(value, list) else value)
            for name, value in cells.items()
        ),
    )
