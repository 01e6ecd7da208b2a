"""What an act will ask, foretold, so that a server answers all of it in one round trip.

Guarantees: a question is the very one that its reader asks, for the reader itself is heard asking;
where one needs another's answer the server finds it for itself. What was foretold wrongly is asked
when its time comes. Refuses: to ask anything of a file, where no question is a journey.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from itertools import groupby
from operator import itemgetter
from typing import Any

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import part_of, send
from ledger.store.engine.turn import Asked, Found, Heard, Part, Question, Turn, UnknownError

_LISTED = "SELECT array_agg(one) FROM ({asked}) AS told(one)"
_NAME = re.compile(r"(?<![:\w]):(\w+)")


class Foreseen:
    """Hears what an act will ask."""

    def __init__(self, connection: Connection, turn: Turn) -> None:
        """Begin with nothing."""
        self._connection = connection
        self._turn = turn
        self._heard: list[Heard] = []
        self._keys: set[Asked] = set()

    @property
    def is_any(self) -> bool:
        """Whether anything is to be asked that is not known."""
        return bool(self._heard)

    def waits_in(self, wanted: dict[Asked, Heard]) -> None:
        """Have all of it asked with other questions, where there is anything.

        Raises:
            UnknownError: It is not answered yet.
        """
        if self._heard:
            for heard in self._heard:
                key = heard.asked.key
                wanted[(key, heard.found) if heard.found else key] = heard
            raise UnknownError

    def knows(self, reader: Callable[..., object], *cells: object) -> bool:
        """Return whether the first question of a reader is answered; nothing is asked for it."""
        heard = self._questions(reader, *cells)
        return all(self._turn.answer_to(asked.key) is not None for asked in heard)

    def is_first(self, *about: object) -> bool:
        """Return whether this is foretold for the first time since the act last wrote."""
        if about in self._turn.asked:
            return False
        self._turn.asked[about] = []
        return True

    def asks(self, reader: Callable[..., object], *cells: object) -> None:
        """Let the first question of a reader be asked.

        Args:
            reader: What is called with the connection and the cells.
            cells: Values, or what is to be found for them.
        """
        for asked in self._questions(reader, *cells):
            self.hears(asked)

    def asks_for(self, statement: str, **cells: object) -> None:
        """Let a question be asked."""
        self.hears(Question(statement, cells))

    def asks_each(self, reader: Callable[..., object], statement: str, **cells: object) -> None:
        """Let one question be asked for many of a reader, which is called with one cell.

        Args:
            reader: What is called with the connection and a cell.
            statement: Tells that cell, and after it what would answer; rows of one follow another.
            cells: Values of the statement, or what is to be found for them.
        """
        self._heard.append(Heard(Question(statement, cells), reader=reader))

    def hears(self, asked: Question) -> None:
        """Let a question be asked that is not answered yet."""
        key = asked.key
        if key not in self._keys and self._turn.answer_to(key) is None:
            self._keys.add(key)
            self._heard.append(Heard(asked))

    def finds(self, kind: str, statement: str, **cells: object) -> Found:
        """Return what the one cell of a question's answer will be, for other questions."""
        return self._found(kind, Question(statement, cells))

    def finds_by(self, kind: str, reader: Callable[..., object], *cells: object) -> Found:
        """Return what the one cell of the first answer to a reader will be; as `finds`."""
        (asked,) = self._questions(reader, *cells)
        return self._found(kind, asked)

    def finds_all(
        self, kind: str, reader: Callable[..., object], *cells: object, told: str = _LISTED
    ) -> Found:
        """Return what all of the first answer to a reader will be, a list of what has one cell.

        Args:
            kind: Its type on the server.
            reader: What is called with the connection and the cells.
            cells: Values, or what is to be found for them.
            told: What makes it of the answer, which stands in it as `{asked}`.
        """
        (asked,) = self._questions(reader, *cells)
        return self._found(kind, Question(told.format(asked=asked.statement), asked.cells))

    def _found(self, kind: str, asked: Question) -> Found:
        # Of its own for the whole act: where nothing is found, what stood there would stay.
        self._turn.founds += 1
        found = Found(self._turn.founds, kind)
        self._heard.append(Heard(asked, found))
        return found

    def _questions(self, reader: Callable[..., object], *cells: object) -> list[Question]:
        return _heard(self._connection, self._turn, reader, *cells)

    def answer(self, before: list[Part]) -> list[list[Any]]:
        """Ask all of it after other statements, in one round trip, and return the rows of these.

        The answers are remembered as those to the questions that the act will ask.
        """
        return answered(self._connection, self._turn, self._heard, before)


def answered(
    connection: Connection, turn: Turn, every: Sequence[Heard], before: Sequence[Part] = ()
) -> list[list[Any]]:
    """Ask questions after other statements, in one round trip, and return the rows of these.

    Args:
        connection: A connection to a server, in the transaction of an act.
        turn: What the act knows; it learns the answers.
        every: The questions, each after those whose answers it asks for.
        before: The other statements.
    """
    parts = [_part(connection, heard) for heard in every]
    answers = send(connection, turn, [*before, *parts])
    values: dict[Found, object] = {}
    for heard, rows in zip(every, answers[len(before) :], strict=True):
        told = rows
        if heard.found:
            told = [row[:1] for row in rows]
            values[heard.found] = told[0][0] if told else None
        _remember(turn, heard.asked, told, values)
        if heard.reader:
            for cell, of_one in groupby(rows, key=itemgetter(0)):
                (asked,) = _heard(connection, turn, heard.reader, cell)
                turn.learn(asked.key, asked, [row[1:] for row in of_one])
    return answers[: len(before)]


def _heard(
    connection: Connection, turn: Turn, reader: Callable[..., object], *cells: object
) -> list[Question]:
    """Return the first question of a reader, where it asks one."""
    turn.heard = heard = list[Question]()
    try:
        reader(connection, *cells)
    except UnknownError:
        pass
    finally:
        turn.heard = None
    return heard


def _part(connection: Connection, heard: Heard) -> Part:
    statement, cells, is_binary, _ = heard.asked
    inlined = {name: sql for name, cell in cells.items() if (sql := _inlined(cell))}
    if inlined:
        statement = _with(statement, tuple(inlined.items()))
        cells = {name: cell for name, cell in cells.items() if name not in inlined}
    if heard.found:
        kept = f"set_config('pottle.found{heard.found.number}', CAST(one AS TEXT), true)"
        statement = f"SELECT one, {kept} FROM ({statement}) AS told(one)"
    return part_of(Question(statement, cells, is_binary), connection)


def _remember(turn: Turn, asked: Question, rows: list[Any], values: Mapping[Found, object]) -> None:
    cells = {name: _valued(cell, values) for name, cell in asked.cells.items()}
    known = asked._replace(cells=cells)
    if not any(cells[name] is None for name, cell in asked.cells.items() if cell is not None):
        turn.learn(known.key, known, rows)


@lru_cache(maxsize=512)  # the same acts find the same things
def _with(statement: str, inlined: tuple[tuple[str, str], ...]) -> str:
    """Return a statement with SQL in the place of names."""
    said = dict(inlined)
    return _NAME.sub(lambda name: said.get(name[1], name[0]), statement)


def _inlined(cell: object) -> str:
    """Return SQL for what is to be found, and nothing for a value."""
    if isinstance(cell, Found):
        return cell.told
    if isinstance(cell, list) and any(isinstance(one, Found) for one in cell):
        told = (one.told for one in cell if isinstance(one, Found))  # among them there is no value
        return f"ARRAY[{', '.join(told)}]"
    return ""


def _valued(cell: object, values: Mapping[Found, object]) -> object:
    if isinstance(cell, Found):
        return values.get(cell)
    if isinstance(cell, list):
        return [_valued(one, values) for one in cell]
    return cell
