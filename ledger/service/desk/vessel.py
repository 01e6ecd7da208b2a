"""What a batch stands in, and how much is in it with what the draft puts in.

Guarantees: the size is the last that the book was told of a vessel, else the volume in its name.
Refuses: to guess one.
"""

import re

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import Add, Draft, MakeUp, Rest, Rinse, Start
from ledger.domain.entries.choices import RinseTo
from ledger.domain.lots.control import Vessel
from ledger.domain.lots.movements import movements
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState
from ledger.errors import LedgerError
from ledger.service.account.made_up import volume_with
from ledger.store.engine.connections import Connection
from ledger.store.read.inputs import vessel_sizes

_SIZE = re.compile(r"\d+(?:[.,]\d+)? ?(?:mL|L|l|ml)\b")


def vessel_of(connection: Connection, draft: Draft, scene: Scene) -> Vessel | None:
    """Return what the batch of a draft that puts something in stands in, if its size is known."""
    lot = scene.lot
    name = _stands_in(lot) if lot and isinstance(draft.facts, Add | MakeUp | Rinse) else None
    holds = _holds_ul(connection, name) if name else None
    if lot is None or name is None or holds is None:
        return None
    return Vessel(name, holds, _with_it_ul(connection, draft, scene, lot))


def _stands_in(lot: LotState) -> str | None:
    told = (entry.facts for entry in reversed(lot.entries))
    return next((at.vessel for at in told if isinstance(at, Start | Rest) and at.vessel), None)


def _holds_ul(connection: Connection, name: str) -> int | None:
    told = vessel_sizes(connection).get(name.casefold())
    in_name = _SIZE.search(name)
    if told is not None or in_name is None:
        return told
    try:
        size = parse_quantity(in_name[0])
    except LedgerError:
        return None
    return size.amount if size.measure is Measure.UL else None


def _with_it_ul(connection: Connection, draft: Draft, scene: Scene, lot: LotState) -> int:
    match draft.facts:
        case MakeUp(volume=volume):
            return volume.amount
        case Rinse(went_to=RinseTo.BATCH, volume_out=ran_through):
            return lot.on_hand_then + ran_through.amount
        case Add(source=source):
            taken = movements(draft, scene)[0][0].taken
            return volume_with(connection, lot.code, source, taken, draft.happened)
        case _:
            return lot.on_hand_then
