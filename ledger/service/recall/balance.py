"""Where all of each lot of a recall is: by what went out of it, came back and is there.

Guarantees: a lot counts in its own measure; of lots that were never bottled the lot itself is
summed, else all bottles. Refuses: to guess what came out of a lot that is not finished: there was
what is there and what went out.
"""

from collections.abc import Iterable

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.balance import Balance, balance_of, summed
from ledger.domain.lots.lot import Lot
from ledger.service.lots.trace import Holder
from ledger.store.engine.connections import Connection
from ledger.store.read.made import finished
from ledger.store.read.turnover import Turnover, turnovers


class RecalledLot(Struct, frozen=True):
    """A lot of a recall, and where all of it is."""

    brief: Lot
    """What it is."""
    balance: Balance
    """Where it is, in its own measure."""


def balances(
    connection: Connection, lots: list[Lot], holders: Iterable[Holder]
) -> tuple[RecalledLot, ...]:
    """Return lots with where all of each is, by what went out of them and came back."""
    numbers = [brief.seq for brief in lots]
    turned, out = turnovers(connection, numbers), finished(connection, numbers)
    moved: dict[str, list[Holder]] = {}
    for holder in holders:
        moved.setdefault(holder.lot, []).append(holder)
    return tuple(
        _recalled(brief, turned[brief.seq], moved.get(brief.code, []), out.get(brief.seq))
        for brief in lots
    )


def _recalled(
    brief: Lot, turned: Turnover, moved: list[Holder], came_out: int | None
) -> RecalledLot:
    def balance(made: int) -> Balance:
        return balance_of(
            made=made,
            on_hand=brief.on_hand,
            used=turned.used,
            moves=[(holder.party, holder.moved_as, abs(holder.amount)) for holder in moved],
            gone=turned.gone,
        )

    if brief.lot_type is not LotType.MADE:
        return RecalledLot(brief, balance(turned.came))
    if came_out is None:
        # Not finished: there was what is there and what went out.
        came_out = -balance(0).unexplained
    return RecalledLot(brief, balance(came_out))


def total(lot: Lot, lots: tuple[RecalledLot, ...]) -> Balance:
    """Return where all bottles are; of a lot that was never bottled, where the lot itself is."""
    packed = [recalled.balance for recalled in lots if recalled.brief.lot_type is LotType.PACKED]
    return summed(
        packed or [recalled.balance for recalled in lots if recalled.brief.code == lot.code]
    )


def counted_in(lot: Lot, lots: tuple[RecalledLot, ...]) -> Measure:
    """Return what the total counts in: bottles, or the measure of a lot never bottled."""
    is_packed = any(recalled.brief.lot_type is LotType.PACKED for recalled in lots)
    return Measure.UEACH if is_packed else lot.measure
