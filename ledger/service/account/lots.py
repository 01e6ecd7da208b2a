"""Lots in brief, with what a mixture holds that nobody has measured.

Guarantees: a lot holds the same here as where it is looked at by itself; a lot in a list of what is
on hand holds something.
"""

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from ledger.domain.lots.lot import Lot
from ledger.service.account.replay import replayed
from ledger.service.account.volumes import volume_now
from ledger.store.engine.abreast import abreast
from ledger.store.engine.connections import Connection
from ledger.store.read import lots
from ledger.store.read.amounts import poured_into


def lots_by_number(connection: Connection, numbers: Iterable[int]) -> dict[int, Lot]:
    """Return lots in brief by their numbers, in the order asked for."""
    wanted = list(dict.fromkeys(numbers))
    found, mixed = abreast(
        connection,
        lambda: lots.lots_by_number(connection, wanted),
        lambda: poured_into(connection, wanted),
    )
    return _with_volumes(connection, found, mixed)


def lots_on_hand(connection: Connection) -> dict[int, Lot]:
    """Return the lots of which there is something, by number, in the order they were opened."""
    mixed = poured_into(connection, lots.all_lots(connection))
    wanted = sorted({*lots.lots_on_hand(connection), *mixed})
    found = _with_volumes(connection, lots.lots_by_number(connection, wanted), mixed)
    return {number: lot for number, lot in found.items() if lot.on_hand}


def _with_volumes(
    connection: Connection, found: dict[int, Lot], mixed: Sequence[int]
) -> dict[int, Lot]:
    """Return lots, those that are mixtures with the volume that is reckoned for them."""
    if not mixed:
        return found
    replay = replayed(connection, mixed)
    told = {lot: volume_now(replay, found[lot].code, found[lot].on_hand) for lot in mixed}
    return found | {
        lot: replace(found[lot], on_hand=volume.amount, is_reckoned=volume.is_reckoned)
        for lot, volume in told.items()
    }
