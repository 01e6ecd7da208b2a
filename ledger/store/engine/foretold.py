"""What an act will ask, foretold, so that a server answers all of it in one round trip.

Guarantees: a question is the very one that its reader asks, for the reader itself is heard asking;
where one needs another's answer the server finds it for itself. What was foretold wrongly is asked
when its time comes. Refuses: to ask anything of a file, where no question is a journey.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import groupby
from operator import itemgetter
from typing import Any

from ledger.store.engine.bare import Connection
from ledger.store.engine.found import asking, valued
from ledger.store.engine.statements import again, part_of, send
from ledger.store.engine.turn import Asked, Found, Heard, Part, Question, Rows, Turn, UnknownError

_LISTED = "SELECT array_agg(one) FROM ({asked}) AS told(one)"


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

    def number_from(self, first: int) -> None:
        """Number what is found from a number on.

        As often as that is foretold, it is in the same words, which a server has prepared. Then
        each is to be an aggregate: where nothing is found, what stood there before would stay.
        """
        self._turn.founds = first

    def asks(self, reader: Callable[..., object], *cells: object) -> None:
        """Let the first question of a reader be asked.

        Args:
            reader: What is called with the connection and the cells.
            cells: Values, or what is to be found for them; of rows that are found it is asked for
                each.
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
        if asked.keys:  # what is found for rows is kept with these, and not told
            self.hears(asked)
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

    def finds_rows(
        self, kinds: Mapping[str, str], statement: str, /, **cells: object
    ) -> list[Found]:
        """Return the cells that each row of a question's answer will have, for other questions.

        Args:
            kinds: The types of its columns on the server, by their names.
            statement: SQL; rows that are found themselves stand in it as `:name`, by the name
                `each`, and so do their cells.
            cells: The values, and these rows and cells.
        """
        self._turn.founds += 1
        rows = Rows(self._turn.founds, tuple(kinds), dict(kinds))
        self._heard.append(Heard(Question(statement, cells), rows))
        return [Found(rows.number, kind, rows, name) for name, kind in kinds.items()]

    def _found(self, kind: str, asked: Question) -> Found:
        # Of its own for the whole act: where nothing is found, what stood there would stay.
        self._turn.founds += 1
        number, keys = self._turn.founds, asked.keys
        rows = keys[0].rows if keys else None
        found = Found(number, kind, rows, f"found{number}" if rows else "")
        if rows:
            rows.kinds[found.column] = kind
        self._heard.append(Heard(asked, found))
        return found

    def _questions(self, reader: Callable[..., object], *cells: object) -> list[Question]:
        return _heard(self._connection, self._turn, reader, *cells)

    def answer(self, before: list[Part]) -> list[list[Any]]:
        """Ask all of it after other statements, in one round trip, and return the rows of these.

        The answers are remembered as those to the questions that the act will ask; what it asked
        before it wrote something it will ask after it, so that goes with it.
        """
        every = [*again(self._turn).values(), *self._heard]
        return answered(self._connection, self._turn, every, before)


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
    parts = [part_of(asking(heard), connection) for heard in every]
    answers = send(connection, turn, [*before, *parts])
    values: dict[Found, object] = {}
    for heard, rows in zip(every, answers[len(before) :], strict=True):
        if heard.is_kept_in_rows:
            continue
        told = rows
        if isinstance(heard.found, Found):
            told = [row[:1] for row in rows]
            values[heard.found] = told[0][0] if told else None
        if keys := heard.asked.keys:
            _remember_each(turn, heard.asked, keys, rows, values)
        else:
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


def _remember_each(
    turn: Turn,
    asked: Question,
    keys: Sequence[Found],
    rows: list[Any],
    values: Mapping[Found, object],
) -> None:
    many = len(keys)
    for _, of_one in groupby(rows, key=itemgetter(0)):
        own = list(of_one)
        each = dict(zip(keys, own[0][1 : many + 1], strict=True))
        told = [tuple(row[many + 2 :]) for row in own if row[many + 1] is not None]
        turn.of_many.update(_remember(turn, asked, told, {**values, **each}))


def _remember(
    turn: Turn, asked: Question, rows: list[Any], values: Mapping[Found, object]
) -> tuple[Asked, ...]:
    """Learn an answer, and return its key; none where a cell was not found."""
    cells = {name: valued(cell, values) for name, cell in asked.cells.items()}
    known = asked._replace(cells=cells)
    if any(cells[name] is None for name, cell in asked.cells.items() if cell is not None):
        return ()
    turn.learn(known.key, known, rows)
    return (known.key,)
