"""Density of sucrose and water: the equation of ICUMSA SPS-4 with all its terms.

Guarantees: the equation as printed, no range kept and nothing rounded.

References:
    ICUMSA Specification and Standard SPS-4 (1998), density of sucrose solutions; Bubnik and
    others, Sugar Technologists Manual (1995). The coefficients are those of two public
    transcriptions that cite it; they differ in the fourth of the first row of `TERMS` (-3.9643 or
    -3.9646), which moves the density of a 70 °Bx syrup by 7e-5 kg/m³.
"""

from functools import lru_cache

from ledger.science.roots import polynomial

TERMS: tuple[tuple[float, ...], ...] = (
    (385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289),
    (-46.272, -7.172, 1.1597, 5.1126, 17.5254),
    (59.7712, 7.2491, 12.363, -35.4791),
    (-47.2207, -21.6977, 27.6301),
    (18.3184, 12.3081),
)
"""Powers of the mass fraction, from the first, for each power of (t - 20)/100, from the zeroth."""

WATER = (
    999.83952,
    16.952577,
    -7.9905127e-3,
    -46.241757e-6,
    105.84601e-9,
    -281.03006e-12,
)
"""Powers of the temperature in °C, from the zeroth: water (Kell 1975); kg/m³."""

WATER_DIVISOR = 16.887236e-3
"""Water's divisor is one and this times the temperature in °C."""


@lru_cache(maxsize=4096)  # a lot is replayed at every act, through the same mixtures
def density(mass_fraction: float, temp_c: float) -> float:
    """Return the density of sucrose and water in kg/m³, not rounded.

    Args:
        mass_fraction: Mass of sucrose in the mass of the whole.
        temp_c: Temperature in °C.

    >>> round(density(0.5, 20.0), 2)
    1229.65
    """
    hundreds = (temp_c - 20) / 100
    mixed = tuple(mass_fraction * polynomial(row, mass_fraction) for row in TERMS)
    water = polynomial(WATER, temp_c) / (1 + WATER_DIVISOR * temp_c)
    return water + polynomial(mixed, hundreds)
