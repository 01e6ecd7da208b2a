"""Readings of an act side by side: what each of them asks next, a server is asked at once.

Guarantees: they return, or raise, what they would one after the other, in as many journeys as the
one makes that asks most in a row. Refuses: readings that write, for each begins anew when an answer
has come.
"""

from collections.abc import Callable, Sequence
from typing import Any

from ledger.store.engine.bare import Connection
from ledger.store.engine.foretold import answered
from ledger.store.engine.statements import again
from ledger.store.engine.turn import Asked, Heard, UnknownError, turn_of

Reading = Callable[[], Any]
"""Reads by a connection that it knows."""


def abreast(connection: Connection, *readings: Reading) -> list[Any]:
    """Return what readings return that read by a connection in a transaction."""
    turn = turn_of(connection)
    if turn is None or not turn.is_far or turn.heard is not None:
        return [reading() for reading in readings]
    told = dict[int, Any]()
    if turn.wanted is not None:  # they are a part of others
        _go_on(readings, told)
        if len(told) < len(readings):
            raise UnknownError
    while len(told) < len(readings):
        wanted = turn.wanted = dict[Asked, Heard]()
        try:
            _go_on(readings, told)
        finally:
            turn.wanted = None
        if wanted:
            answered(connection, turn, [*(again(turn) | wanted).values()])
    return [told[place] for place in range(len(readings))]


def _go_on(readings: Sequence[Reading], told: dict[int, Any]) -> None:
    """Go on with the readings that are not through, as far as answers are known."""
    for place, reading in enumerate(readings):
        if place in told:
            continue
        try:
            told[place] = reading()
        except UnknownError:
            continue
        except Exception:
            if all(before in told for before in range(place)):
                raise
            return  # one before it may raise too, and would have been first
