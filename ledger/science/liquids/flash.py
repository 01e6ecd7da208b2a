"""The flash point of spirit: the temperature from which its vapour catches fire.

Guarantees: Liebman's condition for one flammable component in water, that its partial pressure
reaches what it is at the flash point of the pure liquid, with activities by van Laar; closed cup.
Of the published table it is disputed whether its figures are by volume or by weight: by neither
reading is a published flash point more than `OVER_C` below the one reckoned, and a class is told by
that lower end. Sugar and oil are not reckoned. Results are floats and not rounded. Refuses: more
than all of a mass.

References:
    van Laar's constants for ethanol and water, 1.6798 and 0.9227 (DECHEMA's collection, from
    memory), and Antoine's for ethanol in mmHg and °C, 8.20417, 1642.89, 230.3 (from memory).
    13 °C for pure ethanol, closed cup (published data sheets give 12 to 16.6 °C).
"""

from math import exp, log10

ETHANOL_G_PER_MOL, WATER_G_PER_MOL = 46.068, 18.015
"""Molar masses in g/mol."""
PURE_C = 13.0
"""Flash point of pure ethanol in °C, closed cup."""
OVER_C = 2.1
"""By how much a published flash point may lie below the one reckoned, in °C, whichever way its
table is read; above it they lie by up to 5.8 °C, which errs on the safe side."""
VAN_LAAR_ETHANOL, VAN_LAAR_WATER = 1.6798, 0.9227
"""Constants of van Laar's equation for ethanol in water."""
ANTOINE_A, ANTOINE_B, ANTOINE_C = 8.20417, 1642.89, 230.3
"""Constants of Antoine's equation for ethanol, in mmHg and °C."""


def flash_point_c(mass_fraction: float) -> float | None:
    """Return the flash point of ethanol and water in °C, closed cup.

    Args:
        mass_fraction: Mass fraction of ethanol, from 0 to 1.

    Returns:
        None where there is no ethanol.

    Raises:
        ValueError: The fraction lies outside 0 to 1.

    >>> round(flash_point_c(0.4), 1), flash_point_c(0)
    (26.3, None)
    """
    if not 0 <= mass_fraction <= 1:
        raise ValueError("A mass fraction lies between 0 and 1.")
    ethanol = mass_fraction / ETHANOL_G_PER_MOL
    water = (1 - mass_fraction) / WATER_G_PER_MOL
    if not ethanol:
        return None
    x = ethanol / (ethanol + water)
    needed = _pressure_mmhg(PURE_C) / (x * activity(x))
    # Antoine's equation, solved for the temperature.
    return ANTOINE_B / (ANTOINE_A - log10(needed)) - ANTOINE_C


def activity(x: float) -> float:
    """Return van Laar's activity coefficient of ethanol at a mole fraction of it.

    >>> activity(1.0)
    1.0
    """
    if x >= 1:
        return 1.0
    ratio = VAN_LAAR_ETHANOL * x / (VAN_LAAR_WATER * (1 - x))
    return exp(VAN_LAAR_ETHANOL / (1 + ratio) ** 2)


def _pressure_mmhg(temp_c: float) -> float:
    return float(10 ** (ANTOINE_A - ANTOINE_B / (temp_c + ANTOINE_C)))
