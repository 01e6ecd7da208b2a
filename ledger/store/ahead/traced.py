"""What is asked of the lots of a trace, and of mixtures, foretold for a server.

Guarantees: only what readers ask themselves; what is not asked in the end was asked for nothing.
Refuses: to reckon; what the lots hold is replayed by the service.
"""

from collections.abc import Sequence

from ledger.store.ahead.foreseen import MET, foresee_replay
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import amounts, lots, sent, walk

_LOTS = "FROM (SELECT CAST(:lots AS BIGINT[]) AS lots) AS told"
_ONE = f"SELECT CASE WHEN cardinality(lots) = 1 THEN lots[1] END {_LOTS}"
_MANY = f"SELECT CASE WHEN cardinality(lots) > 1 THEN lots END {_LOTS}"
_HELD = "SELECT array_agg(lot) FROM ({asked}) AS held WHERE amount <> 0"
_SORTED = (
    "SELECT array_agg(lot ORDER BY lot) FROM (SELECT unnest(CAST(:held AS BIGINT[])) AS lot "
    "UNION SELECT unnest(CAST(:mixed AS BIGINT[]))) AS either"
)
_EITHER = "SELECT COALESCE(CAST(:many AS BIGINT[]), CAST(:one AS BIGINT[]))"


def foresee_reach(foreseen: Foreseen, lot: int | Found) -> Found:
    """Foretell what tells in which lots something of a lot is, and return all that it came to."""
    foreseen.asks(walk.forward, lot)
    ahead = foreseen.finds_by("BIGINT[]", walk.forward, lot)
    reached = foreseen.finds("BIGINT[]", MET, lots=ahead)
    foresee_replay(foreseen, foreseen.finds("BIGINT[]", MET, lots=_behind(foreseen, reached)))
    return reached


def foresee_trace(foreseen: Foreseen, lot: Found) -> None:
    """Foretell what an act asks that follows a lot to all that is made of it."""
    reached = foresee_reach(foreseen, lot)
    lots.foresee_lots(foreseen, reached)
    foreseen.asks(sent.move_rows, reached)


def foresee_mixed(foreseen: Foreseen, numbers: Sequence[int]) -> None:
    """Foretell which of some lots are mixtures, and what is asked to reckon these."""
    if foreseen.knows(amounts.poured_into, numbers):
        return
    foreseen.asks(amounts.poured_into, numbers)
    _mixed(foreseen, foreseen.finds_all("BIGINT[]", amounts.poured_into, numbers))


def foresee_on_hand(foreseen: Foreseen) -> None:
    """Foretell what is asked of all lots that are on hand."""
    foreseen.asks(lots.all_lots)
    every = foreseen.finds_all("BIGINT[]", lots.all_lots)
    foreseen.asks(amounts.poured_into, every)
    foreseen.asks(amounts.on_hand, every)
    mixed = foreseen.finds_all("BIGINT[]", amounts.poured_into, every)
    held = foreseen.finds_all("BIGINT[]", amounts.on_hand, every, told=_HELD)
    lots.foresee_lots(foreseen, foreseen.finds("BIGINT[]", _SORTED, held=held, mixed=mixed))
    _mixed(foreseen, mixed)


def foresee_replayed(foreseen: Foreseen, numbers: Sequence[int]) -> None:
    """Foretell what is asked of lots that are replayed, and of all behind them."""
    if len(numbers) == 1:
        if not foreseen.knows(walk.back, numbers[0]):
            foreseen.asks(walk.back, numbers[0])
            back = foreseen.finds_by("BIGINT[]", walk.back, numbers[0])
            foresee_replay(foreseen, foreseen.finds("BIGINT[]", MET, lots=back))
    elif not foreseen.knows(walk.all_behind, numbers):
        behind = _behind(foreseen, numbers)
        foresee_replay(foreseen, foreseen.finds("BIGINT[]", MET, lots=behind))


def _mixed(foreseen: Foreseen, numbers: Found) -> None:
    """Foretell what is asked of lots that will be found, one or many, which are replayed."""
    one = foreseen.finds("BIGINT", _ONE, lots=numbers)
    foreseen.asks(walk.back, one)
    back = foreseen.finds_by("BIGINT[]", walk.back, one)
    many = _behind(foreseen, foreseen.finds("BIGINT[]", _MANY, lots=numbers))
    either = foreseen.finds("BIGINT[]", _EITHER, many=many, one=back)
    foresee_replay(foreseen, foreseen.finds("BIGINT[]", MET, lots=either))


def _behind(foreseen: Foreseen, numbers: Sequence[int] | Found) -> Found:
    """Foretell what went into lots at any depth, and return it."""
    foreseen.asks(walk.all_behind, numbers)
    return foreseen.finds_all("BIGINT[]", walk.all_behind, numbers)
