"""What moved of alcohol, in the lots that a spirit account of a period has to look at.

Guarantees: the account comes out as if the whole book were replayed, which a test holds it to;
replayed are only lots that something of spirit went into, and that stood when the period began or
moved in it, with what they are made of. Refuses: to look at lots that were used up before.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from ledger.domain.lots.steps import Step
from ledger.science.contents.received import ReceivedLot, holds_alcohol
from ledger.science.contents.replay import Replay
from ledger.science.contents.spirit import Flow, made_flows, spirit_flows
from ledger.service.account.replay import received_lot
from ledger.store.engine.connections import Connection
from ledger.store.read.periods import lots_of_period
from ledger.store.read.received import received, with_a_strength
from ledger.store.read.steps import steps_of
from ledger.store.read.walk import sources_behind, steps_from


class Alcohol(Struct, frozen=True):
    """What an account is made from."""

    spirits: Mapping[str, ReceivedLot]
    """All received lots that hold alcohol, by code."""
    flows: Sequence[Flow]
    """What moved of alcohol; of a lot either all that ever did, or nothing."""
    finished: Mapping[str, str]
    """When each made lot was finished, by code; rinse and packed lots at once."""


def alcohol_of(connection: Connection, since: str, until: str) -> Alcohol:
    """Return what moved of alcohol in the lots of a period.

    Args:
        connection: A connection in a transaction.
        since: A moment before the period, UTC instant text.
        until: A moment after it.
    """
    known = with_a_strength(connection)
    lots = {code: received_lot(row) for code, row in known.items()}
    spirits = {code: lot for code, lot in lots.items() if holds_alcohol(lot)}
    numbers = {known[code].number: code for code in spirits}
    looked_at = lots_of_period(connection, since, until)
    moved = [lot for lot in looked_at if lot in numbers]
    flows = [
        flow
        for code, told in steps_of(connection, moved, of_bought=True).steps.items()
        for flow in spirit_flows(spirits[code], told)
    ]
    pairs = sources_behind(connection, [lot for lot in looked_at if lot not in numbers])
    with_spirit = _reached(numbers, [(source, lot) for lot, source in pairs])
    made = [lot for lot in looked_at if lot in with_spirit and lot not in numbers]
    of_made, finished = _made(connection, made, sorted(_reached(made, pairs)))
    return Alcohol(spirits, [*flows, *of_made], finished)


def _reached(starts: Iterable[int], pairs: Sequence[tuple[int, int]]) -> frozenset[int]:
    """Return lots and all that are reached from them along pairs."""
    return frozenset(steps_from(0, [*((0, lot) for lot in starts), *pairs])) - {0}


def _made(
    connection: Connection, made: Sequence[int], behind: Sequence[int]
) -> tuple[list[Flow], dict[str, str]]:
    """Return what moved of alcohol in lots made here, and when they were finished."""
    steps = steps_of(connection, behind)
    bought = {code: received_lot(row) for code, row in received(connection, behind).items()}
    replay = Replay(steps.steps, bought)
    codes = {number: code for code, number in steps.numbers.items()}
    told = [codes[lot] for lot in made if codes[lot] in steps.steps]
    ends = {code: _finished(steps.steps[code]) for code in told}
    return (
        [flow for code in told for flow in made_flows(code, replay.happenings(code))],
        {code: end for code, end in ends.items() if end},
    )


def _finished(steps: tuple[Step, ...]) -> str:
    """Return when a lot was finished; one that begins by a filling or a rinse is so at once."""
    if steps and steps[0].kind in ("bottle", "rinse"):
        return steps[0].clock
    return next((step.clock for step in reversed(steps) if step.kind == "finish"), "")
