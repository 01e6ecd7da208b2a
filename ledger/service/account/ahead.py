"""What is asked of the lots of a trace, and of mixtures, foretold for a server.

Guarantees: only what readers ask themselves; what is not asked in the end was asked for nothing.
"""

from collections.abc import Sequence

from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import amounts, lots, sent, walk
from ledger.store.read.foreseen import MET, foresee_replay

_LOTS = "FROM (SELECT CAST(:lots AS BIGINT[]) AS lots) AS told"
_ONE = f"SELECT CASE WHEN cardinality(lots) = 1 THEN lots[1] END {_LOTS}"
_MANY = f"SELECT CASE WHEN cardinality(lots) > 1 THEN lots END {_LOTS}"
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
    mixed = foreseen.finds_all("BIGINT[]", amounts.poured_into, numbers)
    one = foreseen.finds("BIGINT", _ONE, lots=mixed)
    foreseen.asks(walk.back, one)
    back = foreseen.finds_by("BIGINT[]", walk.back, one)
    many = _behind(foreseen, foreseen.finds("BIGINT[]", _MANY, lots=mixed))
    either = foreseen.finds("BIGINT[]", _EITHER, many=many, one=back)
    foresee_replay(foreseen, foreseen.finds("BIGINT[]", MET, lots=either))


def _behind(foreseen: Foreseen, numbers: Found) -> Found:
    """Foretell what went into lots at any depth, and return it."""
    foreseen.asks(walk.all_behind, numbers)
    return foreseen.finds_all("BIGINT[]", walk.all_behind, numbers)
