"""What lots of the book cost, by their replay.

Guarantees: what was spent on a lot and stays in none, as a rinse to waste, is in its cost.
"""

from collections.abc import Sequence
from fractions import Fraction

from ledger.domain.amounts.money import in_hundredths
from ledger.domain.entries import House
from ledger.science.contents.cost import Reckoner
from ledger.service.account.replay import replayed
from ledger.store.engine.connections import Connection
from ledger.store.read import walk
from ledger.store.read.steps import spent_on


def reckoner(connection: Connection, lots: Sequence[int], hour: Fraction | None) -> Reckoner:
    """Return a reckoner of the cost of lots, by their numbers.

    Args:
        connection: A connection in a transaction.
        lots: The numbers of the lots.
        hour: What an hour of work costs, in hundredths; None: work is not counted.
    """
    found = replayed(connection, _with_spent(connection, lots))
    return Reckoner(found.happened(), found.steps.bought, hour)


def hour_of(house: House | None) -> Fraction | None:
    """Return what an hour of work costs in hundredths by the house; None: not known."""
    if house is None or house.hour_minor is None:
        return None
    return in_hundredths(house.hour_minor, house.hour_digits)


def _with_spent(connection: Connection, lots: Sequence[int]) -> list[int]:
    """Return lots and, of whatever they are made of, the lots that were spent on it."""
    wanted, behind = dict.fromkeys(lots), walk.all_behind(connection, lots)
    while more := [lot for lot in spent_on(connection, behind) if lot not in wanted]:
        wanted |= dict.fromkeys(more)
        behind = walk.all_behind(connection, more)
    return list(wanted)
