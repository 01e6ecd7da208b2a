"""How far a lot is traced: which lots are met on the way, not yet what each of them is.

Guarantees: what is asked first of a trace, so that all that is asked of these lots can be asked
together. Refuses: to tell anything of a lot but its code, its number and its shares.
"""

from collections.abc import Mapping

from msgspec import Struct

from ledger.science.contents.shares import Shares
from ledger.service.account.codes import known_lot
from ledger.service.account.shares import NOTHING, Told, shares_ahead, shares_behind
from ledger.store.ahead.traced import foresee_reach
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import walk
from ledger.store.read.queries import LotRow
from ledger.store.read.walk import Edge


class Reach(Struct, frozen=True):
    """How far a lot is traced: which lots are met, not yet what each of them is."""

    row: LotRow
    """The lot."""
    behind: Told
    """What others are in it."""
    ahead: Told
    """What others it is in."""

    @property
    def numbers(self) -> dict[str, int]:
        """The numbers of lots by their codes; there may be more than are met."""
        own = {self.row.opened.code: self.row.seq}
        return {**own, **self.behind.numbers, **self.ahead.numbers}

    @property
    def lots(self) -> dict[str, int]:
        """The numbers of the lots that are met by their codes, the lot itself first."""
        number = self.numbers
        met = (self.row.opened.code, *self.behind.shares.lots, *self.ahead.shares.lots)
        return {code: number[code] for code in met}

    @property
    def back(self) -> list[int]:
        """The lot and those that it is made of, by their numbers."""
        return [self.row.seq, *(self.behind.numbers[lot] for lot in self.behind.shares.lots)]

    @property
    def onward(self) -> list[int]:
        """The lot and those that are made of it, by their numbers."""
        return [self.row.seq, *(self.ahead.numbers[lot] for lot in self.ahead.shares.lots)]

    @property
    def edges(self) -> list[Edge]:
        """What went from lot to lot."""
        number = self.numbers
        return _edges(number, self.behind.shares) + _edges(number, self.ahead.shares)


def reach_on(
    connection: Connection, code: str, *, back: bool = True, forward: bool = True
) -> Reach:
    """Return how far a lot is traced, by its whole code.

    Raises:
        RefusedError: The lot is not in the book.
    """
    row = known_lot(connection, code)
    if forward:
        foresee(connection, lambda foreseen: _ahead(foreseen, row.seq))
    behind, ahead = abreast(
        connection,
        lambda: shares_behind(connection, row) if back else NOTHING,
        lambda: shares_ahead(connection, row) if forward else NOTHING,
    )
    return Reach(row, behind, ahead)


def _ahead(foreseen: Foreseen, lot: int) -> None:
    """Foretell in which lots something of a lot is."""
    if not foreseen.knows(walk.forward, lot):
        foresee_reach(foreseen, lot)


def _edges(number: Mapping[str, int], shares: Shares) -> list[Edge]:
    """Return what went from lot to lot."""
    return [Edge(number[one], number[other], taken) for (one, other), taken in shares.ways.items()]
