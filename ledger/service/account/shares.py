"""How much of a lot of the book is in others, and what others are in it, by their replay.

Guarantees: no lot is told that can hold nothing of what is asked for; a lot that was emptied since
is told with the share it held when it was last made up of anything.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from ledger.domain.entries.choices import LotType
from ledger.science.contents.shares import Shares, Stays, stays_as
from ledger.science.contents.shares_ahead import ahead
from ledger.science.contents.shares_behind import behind
from ledger.service.account.replay import replayed
from ledger.store.engine.connections import Connection
from ledger.store.read import walk
from ledger.store.read.queries import LotRow


class Told(Struct, frozen=True):
    """Shares, and the lots they are of."""

    shares: Shares
    """How much of a lot is in others, or of others in it."""
    numbers: Mapping[str, int]
    """The numbers of these lots, by their codes; there may be more."""
    circles: tuple[tuple[str, ...], ...]
    """Circles in a damaged book, each lot made of the next."""


NOTHING = Told(Shares({}, {}), {}, ())
"""The shares of a lot that is made of nothing, or went nowhere."""


def shares_behind(connection: Connection, lot: LotRow) -> Told:
    """Return how much of each lot is in one, for all that anything of came to it."""
    if lot.opened.lot_type is LotType.RECEIVED:
        return NOTHING
    found = replayed(connection, [lot.seq])
    shares = behind(lot.opened.code, found.happened(), found.received)
    return Told(shares, found.steps.numbers, found.replay.circles)


def shares_ahead(connection: Connection, lot: LotRow) -> Told:
    """Return how much of a lot is in each that anything of it came to."""
    reached = walk.forward(connection, lot.seq)
    if len(reached) == 1:
        return NOTHING
    found = replayed(connection, reached)
    own = found.rows.get(lot.opened.code)
    where = stays_as(own.sort) if own else Stays.IN_LIQUID
    shares = ahead(lot.opened.code, found.happened(), where)
    return Told(shares, found.steps.numbers, found.replay.circles)


def lots_behind(connection: Connection, lots: Sequence[int]) -> dict[int, frozenset[int]]:
    """Return for each lot the numbers of all lots it is made of, at any depth."""
    found = replayed(connection, lots) if lots else None
    if found is None:
        return {}
    happened, number = found.happened(), found.steps.numbers
    code = {seq: name for name, seq in number.items()}
    return {
        lot: frozenset(number[name] for name in behind(code[lot], happened, found.received).lots)
        for lot in lots
    }
