"""What an act will ask, foretold, so that a server answers all of it in one round trip.

Guarantees: a question is the very one that its reader asks, for the reader itself is heard asking;
where one needs another's answer the server finds it for itself. What was foretold wrongly is asked
when its time comes. Refuses: to ask anything of a file, where no question is a journey.
"""

import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Any

from msgspec import Struct

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import part_of, send
from ledger.store.engine.turn import Asked, Found, Part, Question, Turn, UnknownError

_NAME = re.compile(r"(?<![:\w]):(\w+)")


class _Heard(Struct, frozen=True):
    """A question, and what its answer is kept as."""

    asked: Question
    found: Found | None = None


class Foreseen:
    """Hears what an act will ask."""

    def __init__(self, connection: Connection, turn: Turn) -> None:
        """Begin with nothing."""
        self._connection = connection
        self._turn = turn
        self._heard: list[_Heard] = []

    @property
    def is_any(self) -> bool:
        """Whether anything is to be asked that is not known."""
        return bool(self._heard)

    def waits_in(self, wanted: dict[Asked, Question]) -> None:
        """Have all of it asked with other questions, where there is anything; it names all cells.

        Raises:
            UnknownError: It is not answered yet.
        """
        if self._heard:
            wanted.update({heard.asked.key: heard.asked for heard in self._heard})
            raise UnknownError

    def asks(self, reader: Callable[..., object], *cells: object) -> None:
        """Let the first question of a reader be asked.

        Args:
            reader: What is called with the connection and the cells.
            cells: Values, or what is to be found for them.
        """
        heard = self._questions(reader, *cells)
        self._heard += [_Heard(asked) for asked in heard if self._turn.answer_to(asked.key) is None]

    def asks_for(self, statement: str, **cells: object) -> None:
        """Let a question be asked."""
        self._heard.append(_Heard(Question(statement, cells)))

    def finds(self, kind: str, statement: str, **cells: object) -> Found:
        """Return what the one cell of a question's answer will be, for other questions."""
        return self._found(kind, Question(statement, cells))

    def finds_by(self, kind: str, reader: Callable[..., object], *cells: object) -> Found:
        """Return what the one cell of the first answer to a reader will be; as `finds`."""
        (asked,) = self._questions(reader, *cells)
        return self._found(kind, asked)

    def _found(self, kind: str, asked: Question) -> Found:
        # Of its own for the whole act: where nothing is found, what stood there would stay.
        self._turn.founds += 1
        found = Found(self._turn.founds, kind)
        self._heard.append(_Heard(asked, found))
        return found

    def _questions(self, reader: Callable[..., object], *cells: object) -> list[Question]:
        self._turn.heard = heard = list[Question]()
        try:
            reader(self._connection, *cells)
        except UnknownError:
            pass
        finally:
            self._turn.heard = None
        return heard

    def answer(self, before: list[Part]) -> list[list[Any]]:
        """Ask all of it after other statements, in one round trip, and return the rows of these.

        The answers are remembered as those to the questions that the act will ask.
        """
        parts = [self._part(heard) for heard in self._heard]
        answers = send(self._connection, self._turn, [*before, *parts])
        values: dict[Found, object] = {}
        for heard, rows in zip(self._heard, answers[len(before) :], strict=True):
            told = rows
            if heard.found:
                told = [row[:1] for row in rows]
                values[heard.found] = told[0][0] if told else None
            self._remember(heard.asked, told, values)
        return answers[: len(before)]

    def _part(self, heard: _Heard) -> Part:
        statement, cells, is_binary, _ = heard.asked
        inlined = {name: sql for name, cell in cells.items() if (sql := _inlined(cell))}
        if inlined:
            statement = _with(statement, tuple(inlined.items()))
            cells = {name: cell for name, cell in cells.items() if name not in inlined}
        if heard.found:
            kept = f"set_config('pottle.found{heard.found.number}', CAST(one AS TEXT), true)"
            statement = f"SELECT one, {kept} FROM ({statement}) AS told(one)"
        return part_of(Question(statement, cells, is_binary), self._connection)

    def _remember(self, asked: Question, rows: list[Any], values: Mapping[Found, object]) -> None:
        cells = {name: _valued(cell, values) for name, cell in asked.cells.items()}
        known = asked._replace(cells=cells)
        if not any(cell is None for cell in cells.values()):
            self._turn.learn(known.key, known, rows)


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
        return f"ARRAY[{', '.join(one.told for one in cell)}]"
    return ""


def _valued(cell: object, values: Mapping[Found, object]) -> object:
    if isinstance(cell, Found):
        return values.get(cell)
    if isinstance(cell, list):
        return [_valued(one, values) for one in cell]
    return cell
