"""What a lot weighs, so that a liquid is one however it was bought, measured or drawn.

Guarantees: the density is the one that the lot is replayed with: spirit and water by OIML R 22, a
mixture by its mass and volume, anything else as it was read or told. Refuses: to guess one where
some of what is in a lot is not known.
"""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.lots.state import LotState
from ledger.service.account.replay import replayed
from ledger.store.engine.connections import Connection

LITRE_UL = 1_000_000


def with_density(connection: Connection, state: LotState, measure: Measure) -> LotState:
    """Return a lot with its density, where one is needed to count it in a measure and follows."""
    if measure is state.measure or Measure.UEACH in (measure, state.measure):
        return state
    contents = replayed(connection, [state.seq]).replay.contents(state.code)
    if contents.volume_ul <= 0 or contents.mass_mg <= 0 or contents.unknown_ul:
        return state
    density = round(contents.mass_mg * LITRE_UL / contents.volume_ul)
    return replace(state, reckoned_mg_per_l=density)
