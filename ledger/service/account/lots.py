"""Lots in brief, with what a mixture holds that nobody has measured.

Guarantees: a lot holds the same here as where it is looked at by itself.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from ledger.domain.lots.lot import Lot
from ledger.service.account.replay import replayed
from ledger.service.account.volumes import volume_now
from ledger.store.engine.connections import Connection
from ledger.store.read import lots
from ledger.store.read.amounts import poured_into


def lots_by_number(connection: Connection, numbers: Iterable[int]) -> dict[int, Lot]:
    """Return lots in brief by their numbers, in the order asked for."""
    found = lots.lots_by_number(connection, numbers)
    mixed = poured_into(connection, list(found))
    if not mixed:
        return found
    replay = replayed(connection, mixed)
    told = {lot: volume_now(replay, found[lot].code, found[lot].on_hand) for lot in mixed}
    return found | {
        lot: replace(found[lot], on_hand=volume.amount, is_reckoned=volume.is_reckoned)
        for lot, volume in told.items()
    }
