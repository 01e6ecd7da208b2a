"""How turbid drops of oil make a liquid, and how much less the same drops show in syrup.

Guarantees: scattering by Mie, over all sizes that drops of a louche have; turbidity as a band of
orders of magnitude, from drops that show least to drops that show most. Refuses: a single figure,
since nobody knows the drops beforehand, and one published emulsion is all that ties them to NTU.

References:
    Sizes: drops of limoncello of 100 nm (neutron study, abstract, read), of a louche of some µm
    (trade reports).
    Refractive index of sucrose: ICUMSA SPS-3, 20 °C (from memory); of ethanol with water, by mass,
    20 °C: handbook (from memory); water at 20 °C: 1.33299 (GOST R 50546, read).
    The anchor: 0.05 % of orange terpenes in drops of 77 nm gave 72 NTU (Flavour Fragr J 2015,
    10.1002/ffj.3244, abstract, read). Its oil was weighted and its index is not told.
"""

from functools import cache
from math import exp, log, pi
from typing import NamedTuple

from ledger.science.haze.mie import scattered
from ledger.science.ranges import interpolate

WAVE_NM = 550.0
"""Wavelength in air at which turbidity is compared, in nm (Ph. Eur. 2.2.1)."""
SMALLEST_NM, LARGEST_NM = 100.0, 3000.0
"""Diameters of the drops of a louche."""
SIZES = 40
"""Sizes that are looked at between them, each so many per cent larger than the one before."""
FACTOR = 2.0
"""By how much the anchor may be wrong either way: what its oil was weighted with could double or
halve its scattering (its index between 1.45 and 1.50)."""
CLEAR_NTU = 3.0
"""Turbidity up to which a liquid counts as clear: reference suspension I (Ph. Eur. 2.2.1)."""
MOST_NTU = 4000.0
"""The end of the scale: the primary opalescent suspension (Ph. Eur. 2.2.1)."""
_SPREAD = tuple(
    (2 ** (step / 4), exp(-((step / 4 * log(2)) ** 2) / (2 * 0.35**2))) for step in range(-5, 6)
)
"""Sizes of drops about their middle, each with its weight: a spread of 0.35 in the logarithm, as of
emulsions that nobody homogenised (common practice, no source)."""
_ANCHOR = (500.0, 0.841, 1.473, 77.0, 72.0)
"""Oil in mg/L, its density in g/mL and index, diameter of its drops in nm, and its NTU."""
_SUGAR = ((0.0, 1.33299), (20.0, 1.36384), (40.0, 1.39986), (60.0, 1.44193))
_SPIRIT = (
    (0.0, 1.33299),
    (10.0, 1.3395),
    (20.0, 1.3469),
    (30.0, 1.3535),
    (40.0, 1.3583),
    (50.0, 1.3616),
    (60.0, 1.3638),
    (80.0, 1.3658),
    (100.0, 1.3614),
)


class Range(NamedTuple):
    """A figure that lies between two."""

    low: float
    """The least that it may be."""
    high: float
    """The most."""


class Drops(NamedTuple):
    """What drops are made of."""

    density_g_per_ml: float
    """Its density in g/mL."""
    bending: float
    """Its refractive index."""


def index_of_syrup(brix: float) -> float:
    """Return the refractive index of sugar in water at 20 °C, by a cubic through four points.

    >>> round(index_of_syrup(60), 5), round(index_of_syrup(50), 3)
    (1.44193, 1.42)
    """
    total = 0.0
    for degree, index in _SUGAR:
        weight = 1.0
        for other, _ in _SUGAR:
            if other != degree:
                weight *= (brix - other) / (degree - other)
        total += weight * index
    return total


def index_of_spirit(mass_percent: float) -> float:
    """Return the refractive index of ethanol in water at 20 °C.

    >>> round(index_of_spirit(94), 4)
    1.3627
    """
    return interpolate(_SPIRIT, mass_percent)


def turbidity(parted_mg_per_l: Range, drops: Drops, medium: float) -> Range:
    """Return the turbidity in NTU of oil that parted from a liquid, whatever the size of its drops.

    Args:
        parted_mg_per_l: How much of it parted, at the least and at the most.
        drops: What the drops are.
        medium: Refractive index of the liquid.
    """
    shown = [_show(drops, medium, size) for size in _sizes()]
    least, most = min(shown) / FACTOR, max(shown) * FACTOR
    return Range(
        min(MOST_NTU, parted_mg_per_l.low * least), min(MOST_NTU, parted_mg_per_l.high * most)
    )


def against(drops: Drops, clearer: float, other: float) -> Range:
    """Return how many times more the same drops scatter in one liquid than in another.

    The tenth of sizes at either end is left out.

    Args:
        drops: What the drops are.
        clearer: Refractive index of the liquid in which they show less.
        other: Refractive index of the other.
    """
    ratios = sorted(
        _sideways(drops, other, size) / _sideways(drops, clearer, size) for size in _sizes()
    )
    # Drops are never all of the size that shows least in the syrup, or most.
    edge = SIZES // 10
    return Range(ratios[edge], ratios[-1 - edge])


@cache
def _sizes() -> tuple[float, ...]:
    step = (LARGEST_NM / SMALLEST_NM) ** (1 / (SIZES - 1))
    return tuple(SMALLEST_NM * step**number for number in range(SIZES))


def _show(drops: Drops, medium: float, size_nm: float) -> float:
    """Return the NTU of a mg/L of drops of a size."""
    milligrams, density, index, anchor_nm, ntu = _ANCHOR
    anchored = _sideways(Drops(density, index), index_of_syrup(0), anchor_nm)
    return ntu / milligrams * _sideways(drops, medium, size_nm) / anchored


@cache
def _sideways(drops: Drops, medium: float, size_nm: float) -> float:
    """Return what a mg/L of drops scatters sideways, in a unit that is the same for all.

    Drops are never of one size: the mean over sizes about it has not the ripples of a single one.
    """
    wave = WAVE_NM / medium
    shown = volume = 0.0
    for factor, weight in _SPREAD:
        size = factor * size_nm
        found = scattered(drops.bending / medium, pi * size / wave)
        shown += weight * found.sideways * wave**2
        volume += weight * size**3
    return shown / volume / drops.density_g_per_ml
