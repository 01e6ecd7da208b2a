"""An act that writes: its transaction, from the look that it takes to its commit.

Guarantees: what it writes is in the book only where nobody else wrote since it looked; what it
asked is remembered until it writes. On a server its look, all that it foretells, is one round trip,
and its turn, all that it writes and its commit one more: others write meanwhile, and who finds
that they did is told. Refuses: to write for an act that broke off.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import chain

from ledger.store.engine import patience
from ledger.store.engine.bare import Connection, Engine
from ledger.store.engine.connections import LOCK_KEY, SERVER_NOW
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.refusals import storage_errors
from ledger.store.engine.statements import BY_INDEX, send
from ledger.store.engine.turn import Part, Turn, taking, turn_of

Foretell = Callable[[Foreseen], None]
"""Tells what an act will ask."""
_LOOK = Part("BEGIN ISOLATION LEVEL REPEATABLE READ")
_BEGIN = Part("BEGIN ISOLATION LEVEL READ COMMITTED")
_TURN = Part("SELECT pg_advisory_xact_lock(%s)", (LOCK_KEY,))
NOW = "pottle.now"
"""Where a server keeps for a writer what its clock said when it looked."""


@contextmanager
def acting(
    engine: Engine, foretell: Foretell | None = None, *, in_turn: bool = True
) -> Iterator[Connection]:
    """Open a transaction in which an act looks and writes; commits at its end, or leaves no trace.

    Args:
        engine: The file or server.
        foretell: Tells what it will ask, for where that is a journey.
        in_turn: Whether it takes its turn before it looks, so that others wait for all of it. Of a
            file every act does; on a server it is else taken with the first that it writes.

    Raises:
        MovedError: Somebody else wrote since it looked, without its turn; nothing is recorded.
    """
    turn = Turn(is_far=engine.dialect.name == "postgresql")
    # By itself psycopg begins a transaction with a journey for that alone.
    how = {"isolation_level": "AUTOCOMMIT"} if turn.is_far else {}
    with (
        storage_errors(),
        engine.connect().execution_options(writes=True, **how) as connection,
        connection.begin(),
        taking(connection, turn),
    ):
        if turn.is_far:
            # Its turn ends with the transaction, whatever becomes of the process.
            first = [_BEGIN, _TURN] if in_turn else [_LOOK]
            turn.opening = [] if in_turn else [_TURN]
            *_, ((*_, now),) = _foreseen(connection, turn, foretell).answer([*first, _clock()])
            connection.info[SERVER_NOW] = now
        yield connection
        if turn.pending:
            send(connection, turn, [Part("COMMIT")])


def foresee(connection: Connection, foretell: Foretell | None) -> None:
    """Ask what a further act of a transaction will ask, where that saves journeys."""
    turn = turn_of(connection)
    if turn and turn.is_far and foretell and turn.heard is None:
        foreseen = _foreseen(connection, turn, foretell)
        if turn.wanted is not None:
            foreseen.waits_in(turn.wanted)
        elif foreseen.is_any:  # else what was written may wait
            foreseen.answer([])


def _foreseen(connection: Connection, turn: Turn, foretell: Foretell | None) -> Foreseen:
    foreseen = Foreseen(connection, turn)
    if foretell:
        foretell(foreseen)
    return foreseen


def _clock() -> Part:
    """Return the statement that asks the server's clock, and says how the act goes on.

    Who stops in it is put out, and it goes by index.
    """
    settings = {
        "idle_in_transaction_session_timeout": str(patience.IDLE_MS),
        "plan_cache_mode": "force_generic_plan",  # by index there is but one way
        **dict.fromkeys(BY_INDEX, "off"),
    }
    told = ", ".join("set_config(%s, %s, true)" for _ in settings)
    return Part(
        f"SELECT {told}, "
        "CAST(set_config(%s, CAST(clock_timestamp() AS TEXT), true) AS TIMESTAMPTZ)",
        (*chain.from_iterable(settings.items()), NOW),
    )
