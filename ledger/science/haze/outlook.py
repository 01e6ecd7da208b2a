"""What is foretold of a liquid before it is poured: will the spirit carry it, how will it look.

Guarantees: every figure is a band; what is not known is left out and the rest is still told; spirit
is called safe only above the whole band, and too weak only below it. Refuses: to foretell powder,
wax and age, which make a liquid hazy in which all oil is dissolved.
"""

from msgspec import Struct

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import CLEAR_NTU, Range, against, index_of_syrup, turbidity
from ledger.science.haze.parted import drops_of, most_held, parted
from ledger.science.haze.strength import Band, Calibration, Oil, least_strength

SYRUP_BRIX = 60.0
"""Strength of a syrup that an essence is dosed into, where no other is known (common practice, no
source)."""


class Diluted(Struct, frozen=True):
    """A liquid that is mostly water: a syrup, or a drink."""

    oil_mg_per_l: float
    """Oil in it."""
    abv: float
    """Its strength in % vol."""
    brix: float
    """Its sugar in % of the mass."""


def clear_by(
    oil: Oil, oil_share: float, abv: float | None, calibration: Calibration
) -> tuple[Band | None, Carried | None]:
    """Return the least strength, and whether the spirit at hand has it."""
    band = least_strength(oil, oil_share, calibration)
    if band is None or abv is None:
        return band, None
    if abv >= band.high:
        return band, Carried.YES
    return band, Carried.NO if abv < band.low else Carried.EDGE


def neat_turbidity(
    oil: Oil, oil_mg_per_l: float, dissolved: Carried | None, medium: float
) -> Range | None:
    """Return the turbidity of an essence: all or nothing, but for the edge, where it is either."""
    if dissolved is None:
        return None
    if dissolved is Carried.YES:
        return Range(0.0, CLEAR_NTU)
    # Just below the band a tenth of the oil may have parted, and the rest with a few points less.
    least = oil_mg_per_l / 10 if dissolved is Carried.NO else 0.0
    return turbidity(Range(least, oil_mg_per_l), drops_of(oil), medium)


def diluted_turbidity(oil: Oil, liquid: Diluted, calibration: Calibration) -> Range:
    """Return the turbidity of a syrup or a drink in NTU; of a clear one where nothing parts."""
    apart = parted(oil, liquid.oil_mg_per_l, liquid.abv, calibration)
    shown = turbidity(apart, drops_of(oil), index_of_syrup(liquid.brix))
    return Range(shown.low, max(shown.high, CLEAR_NTU) if not apart.low else shown.high)


def compared(oil: Oil, syrup: Diluted, glass: Diluted) -> Range:
    """Return how many times more the same drops scatter in the glass than in the syrup."""
    return against(drops_of(oil), index_of_syrup(syrup.brix), index_of_syrup(glass.brix))


def held(oil: Oil, glass: Diluted, calibration: Calibration) -> Range:
    """Return how many mg/L of oil a glass holds clear: at the worst, and at the best."""
    return most_held(oil, glass.abv, calibration)
