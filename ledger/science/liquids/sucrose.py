"""Sucrose and water: density, °Brix, g/L, specific gravity, correction of a hydrometer's reading.

Guarantees: densities are those of ICUMSA SPS-4, from 0 to 75 °Bx and 0 to 80 °C; every measure of
strength turns into the others and back. Results are floats and not rounded: whoever shows one
rounds it and says so. Refuses: what lies outside. True of sucrose and water alone: alcohol makes a
refractometer read too much sugar and a hydrometer too little, so a syrup is measured before the
essence goes in.

°Brix is g of sucrose in 100 g of syrup; it is the same at every temperature, a reading is not.
A refractometer that compensates temperature needs no correction; this module has none for others.
"""

from collections.abc import Callable

from ledger.science.liquids import sps4
from ledger.science.liquids.hydrometer import (
    specific_gravity,
    specific_gravity_in_air,
    true_density,
)
from ledger.science.ranges import Limits, figure, within
from ledger.science.roots import solve

STRENGTHS_BRIX: Limits = (0.0, 75.0)
"""What is kept to, in °Bx: as far as the published tables that the tests compare with."""
TEMPERATURES_C: Limits = (0.0, 80.0)
"""What SPS-4 is stated for, in °C: from memory."""


def density(brix: float, temp_c: float = 20.0) -> float:
    """Return the density of sucrose and water in kg/m³ (the same number as g/L), not rounded.

    Raises:
        RefusedError: The strength is not 0 to 75 °Bx or the temperature not 0 to 80 °C.

    References:
        ICUMSA SPS-4 (1998).

    >>> round(density(60), 2)
    1286.61
    """
    return sps4.density(check_brix(brix) / 100, check_temperature(temp_c))


def brix_from_density(density_kg_per_m3: float, temp_c: float = 20.0) -> float:
    """Return the °Brix of the syrup that has a density at a temperature, not rounded.

    Raises:
        RefusedError: No syrup of 0 to 75 °Bx has that density at that temperature.
    """
    check_temperature(temp_c)
    low, high = (sps4.density(brix / 100, temp_c) for brix in STRENGTHS_BRIX)
    within(
        density_kg_per_m3,
        (low, high),
        f"At {figure(temp_c)} °C sugar and water have densities from {{low}} to {{high}} kg/m³, "
        "and {got} kg/m³ is outside.",
        "Check the reading and its temperature; alcohol in it falsifies a density.",
    )
    return _solved(lambda brix: sps4.density(brix / 100, temp_c), density_kg_per_m3)


def grams_per_litre_from_brix(brix: float, temp_c: float = 20.0) -> float:
    """Return the g of sucrose in 1 L of syrup, measured at a temperature, not rounded.

    >>> round(grams_per_litre_from_brix(50), 1)
    614.8
    """
    return density(brix, temp_c) * brix / 100


def brix_from_grams_per_litre(grams: float, temp_c: float = 20.0) -> float:
    """Return the °Brix of a syrup with so many g of sucrose in 1 L at a temperature, not rounded.

    Raises:
        RefusedError: It is less than nothing or more than 75 °Bx.

    >>> round(brix_from_grams_per_litre(850), 2)
    64.66
    """
    check_temperature(temp_c)
    within(
        grams,
        (0.0, grams_per_litre_from_brix(STRENGTHS_BRIX[1], temp_c)),
        "A litre of syrup holds from {low} to {high} g of sugar (75 °Bx), and {got} g is outside.",
        "Check the number, and whether it is g in a litre or in a kilogram.",
    )
    return _solved(lambda brix: grams_per_litre_from_brix(brix, temp_c), grams)


def specific_gravity_from_brix(
    brix: float, temp_c: float = 20.0, water_c: float | None = None, *, in_air: bool = False
) -> float:
    """Return the specific gravity of a syrup, not rounded.

    Args:
        brix: Strength in °Bx.
        temp_c: Temperature of the syrup.
        water_c: Temperature of the water it is compared with; that of the syrup if not given.
        in_air: Whether both are weighed in air, as a pycnometer is, or true densities are meant.

    >>> round(specific_gravity_from_brix(66.7), 2)
    1.33
    """
    ratio = specific_gravity_in_air if in_air else specific_gravity
    return ratio(density(brix, temp_c), density(0, temp_c if water_c is None else water_c))


def brix_from_specific_gravity(
    gravity: float, temp_c: float = 20.0, water_c: float | None = None, *, in_air: bool = False
) -> float:
    """Return the °Brix of a specific gravity, not rounded; see `specific_gravity_from_brix`.

    Raises:
        RefusedError: No syrup of 0 to 75 °Bx has that specific gravity.
    """
    low, high = (
        specific_gravity_from_brix(brix, temp_c, water_c, in_air=in_air) for brix in STRENGTHS_BRIX
    )
    within(
        gravity,
        (low, high),
        "Syrups up to 75 °Bx have specific gravities from {low} to {high}, and {got} is outside.",
        "Check the reading, and that it is a specific gravity (water is 1).",
    )
    return _solved(
        lambda brix: specific_gravity_from_brix(brix, temp_c, water_c, in_air=in_air), gravity
    )


def true_from_indicated(indicated_brix: float, temp_c: float, base_c: float = 20.0) -> float:
    """Return the true °Brix of a glass hydrometer's reading at a temperature, not rounded.

    Args:
        indicated_brix: The reading on a scale of °Brix.
        temp_c: Temperature of the syrup when it was read, 0 to 80 °C.
        base_c: Temperature for which the scale is made.

    Raises:
        RefusedError: Reading or temperature is outside, or no syrup reads so there.
    """
    true = true_density(density(indicated_brix, base_c), temp_c, base_c)
    return brix_from_density(true, temp_c)


def check_brix(brix: float) -> float:
    """Return a strength in °Bx when it is within the table.

    Raises:
        RefusedError: It is not 0 to 75.
    """
    return within(
        brix,
        STRENGTHS_BRIX,
        "The table of sugar and water (ICUMSA SPS-4) is used from {low} to {high} °Bx, "
        "and {got} °Bx is outside.",
        "Check the number; °Brix is g of sugar in 100 g of syrup.",
    )


def check_temperature(temp_c: float) -> float:
    """Return a temperature in °C when the table covers it.

    Raises:
        RefusedError: It is not 0 to 80 °C.
    """
    return within(
        temp_c,
        TEMPERATURES_C,
        "The table of sugar and water (ICUMSA SPS-4) runs from {low} to {high} °C, "
        "and {got} °C is outside.",
        "Bring the syrup into that range, best to 20 °C, and read again.",
    )


def _solved(sum_of: Callable[[float], float], wanted: float) -> float:
    return solve(sum_of, wanted, *STRENGTHS_BRIX)
