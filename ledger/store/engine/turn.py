"""What one act asked the book so far, and what it is about to write.

Guarantees: an answer is given again only while the act has written nothing since; what never
changes in a book, such as a lot's number, is known to the end of the act. Refuses: to outlast the
transaction, in which nobody else can write or be seen to.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from msgspec import Struct

from ledger.store.engine.bare import Connection

Asked = tuple[object, ...]
"""A question, as the answer to it is found again."""
_TURN = "turn"


class Question(NamedTuple):
    """A statement that is answered by rows."""

    statement: str
    """SQL; a value stands in it as `:name`."""
    cells: Mapping[str, object]
    """The values by their names."""
    is_binary: bool = False
    """Whether a server is to answer in binary."""
    lasts: bool = False
    """Whether what answers it never changes in a book, once there is anything."""

    @property
    def key(self) -> Asked:
        """The question as its answer is found again."""
        named = self.cells.items()
        told = [(name, tuple(it) if isinstance(it, list) else it) for name, it in named]
        return (self.statement, frozenset(told))

    @property
    def keys(self) -> "tuple[Found, ...]":
        """The cells of rows that were found, for each of which it is asked; none: it is but once.

        What is asked of such rows as a whole is asked once.
        """
        if any(isinstance(cell, Rows) for cell in self.cells.values()):
            return ()
        cells = ([cell] if not isinstance(cell, list) else cell for cell in self.cells.values())
        each = (one for cell in cells for one in cell if isinstance(one, Found) and one.rows)
        return tuple(dict.fromkeys(each))


class Part(NamedTuple):
    """A statement in the words of a driver."""

    statement: str
    """SQL."""
    cells: Mapping[str, object] | Sequence[object] | None = None
    """Its values, by their names or by their places."""
    is_binary: bool = False
    """Whether a server is to answer in binary."""


class Rows(Struct, eq=False):
    """Rows that a server finds by one question, for others that are asked for each of them."""

    number: int
    """Where they are among what is found for their act."""
    names: tuple[str, ...]
    """The names of the columns that they have at first."""
    kinds: dict[str, str]
    """The type of each of their columns on the server, by its name."""

    @property
    def told(self) -> str:
        """SQL for them, once they were found, by the name `each`."""
        columns = ", ".join(f"{name} {kind}" for name, kind in self.kinds.items())
        kept = f"COALESCE({kept_as(self.number)}, '[]')"
        return f"jsonb_to_recordset(CAST({kept} AS JSONB)) AS each({columns})"


class Found(Struct, frozen=True):
    """A value that a server finds by one question, for others."""

    number: int
    """Where it is among those of its act."""
    kind: str
    """Its type on the server."""
    rows: Rows | None = None
    """The rows of each of which it is a cell, where it is not one value alone."""
    column: str = ""
    """The name of its column in these."""

    @property
    def told(self) -> str:
        """SQL for it, once it was found; NULL where nothing was."""
        if self.rows:
            return f"each.{self.column}"
        return f"CAST({kept_as(self.number)} AS {self.kind})"


def kept_as(number: int) -> str:
    """Return SQL for the text as which a server keeps what it found, NULL where that is nothing."""
    return f"NULLIF(current_setting('pottle.found{number}', true), '')"


class Heard(Struct, frozen=True):
    """A question that is to be answered with others, and what its answer is kept as."""

    asked: Question
    """The question."""
    found: Found | Rows | None = None
    """Where other questions find its answer; None: none of them asks for it."""
    reader: Callable[..., object] | None = None
    """Of which further questions it answers one for each first cell of its rows; None: of none."""

    @property
    def is_kept_in_rows(self) -> bool:
        """Whether its answer is kept in rows on the server, and not told."""
        return isinstance(self.found, Rows) or bool(self.found and self.found.rows)


class UnknownError(Exception):
    """A question was only to be heard, and has no answer yet."""


@dataclass(slots=True)
class Turn:
    """What an act knows of the book, and has to tell it."""

    asked: dict[Asked, list[Any]] = field(default_factory=dict)
    """The answers, each by its question."""
    lasting: dict[Asked, list[Any]] = field(default_factory=dict)
    """Those that nothing that is written changes."""
    known: dict[object, Any] = field(default_factory=dict)
    """What it knows of the end of the book and of what never changes."""
    is_far: bool = False
    """Whether every word to the book is a journey, as to a server: then words wait for others."""
    used: dict[Asked, Question] = field(default_factory=dict)
    """What it asked since it last wrote, and was not foretold for each of many."""
    of_many: set[Asked] = field(default_factory=set)
    """What was foretold for each of many."""
    opening: list[Part] = field(default_factory=list)
    """What is sent before the first that it writes."""
    pending: list[Part] = field(default_factory=list)
    """What it wrote and was not sent yet."""
    founds: int = 0
    """How many values it had a server find."""
    heard: list[Question] | None = None
    """Where a question is put that is only to be heard; None: it is to be answered."""
    wanted: dict[Asked, Heard] | None = None
    """Where a question is put whose answer is not known, to be asked with others; None: at once."""

    def answer_to(self, key: Asked) -> list[Any] | None:
        """Return the answer that is known to a question, or None."""
        rows = self.asked.get(key)
        return self.lasting.get(key) if rows is None else rows

    def learn(self, key: Asked, asked: Question, rows: list[Any]) -> None:
        """Know the answer to a question."""
        (self.lasting if asked.lasts and rows else self.asked)[key] = rows


@contextmanager
def taking(connection: Connection, turn: Turn | None = None) -> Iterator[Turn]:
    """Let what is asked by a connection be remembered for as long as the block runs."""
    about = connection.info  # of a connection that was lost nothing can be asked at the end
    turn = about[_TURN] = turn or Turn()
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
