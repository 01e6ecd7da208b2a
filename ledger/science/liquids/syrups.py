"""Simple syrup: what sugar and water make by weight or by volume, and whether it stays dissolved.

Guarantees: every answer says whether its parts were weighed or measured; figures are rounded to
what each field says. Refuses: parts that are not above zero, a bulk density no sugar has, and
syrups beyond `ledger.science.liquids.sucrose`.
"""

import math
from enum import StrEnum

from msgspec import Struct

from ledger.errors import RefusedError
from ledger.science.liquids.sucrose import check_temperature, density, grams_per_litre_from_brix
from ledger.science.ranges import Limits, figure, within
from ledger.science.roots import polynomial

BULK_GRANULATED_G_PER_ML = 0.85
"""Common bulk density of granulated sugar; secondary sources, which range as `BULK_LIMITS` does."""
BULK_LIMITS: Limits = (0.70, 0.90)
"""Bulk densities of granulated sugar, loose to shaken down, in g/mL."""
SATURATION = (64.447, 0.08222, 1.6169e-3, -1.558e-6, -4.63e-8)
"""Powers of the temperature in °C, from the zeroth: °Bx of saturated sucrose (Vavrinecz).

From memory. At 20 °C it gives 66.72; a Russian table has 66.74 and older ones 67.09.
"""
SOURCES_DIFFER_BRIX = 0.4
"""How far published saturations at 20 °C lie apart."""


class Basis(StrEnum):
    """How the parts of a simple syrup were told."""

    WEIGHT = "by weight"
    """Sugar and water weighed."""
    VOLUME = "by volume"
    """Sugar measured loose and water measured, in the same measure."""


class SimpleSyrup(Struct, frozen=True):
    """A syrup of sugar and water, nothing lost by boiling."""

    basis: Basis
    """How the parts were told."""
    sugar_parts: float
    """Parts of sugar, as given."""
    water_parts: float
    """Parts of water, as given."""
    brix_mbx: int
    """Strength in thousandths of a °Bx, rounded half to even."""
    density_mg_per_l: int
    """Density at 20 °C in mg/L, rounded to 10 (0.01 kg/m³)."""
    sugar_mg_per_l: int
    """Sugar in a litre at 20 °C, rounded to 0.1 g."""
    yield_ul_per_kg_water: int
    """Volume at 20 °C that 1 kg of water makes, rounded to 1 mL."""
    warning: str | None
    """A sentence when it will not stay dissolved at 20 °C, or may not."""


def by_weight(sugar_parts: float, water_parts: float) -> SimpleSyrup:
    """Return the syrup of so many parts by weight of sugar and of water.

    Raises:
        RefusedError: A part is not above zero, or the syrup is beyond 75 °Bx.

    >>> by_weight(3, 2).brix_mbx
    60000
    """
    _check_parts(sugar_parts, water_parts)
    return _syrup(Basis.WEIGHT, sugar_parts, water_parts, 1.0)


def by_volume(sugar_parts: float, water_parts: float, bulk_g_per_ml: float) -> SimpleSyrup:
    """Return the syrup of so many parts by volume of loose sugar and of water at 20 °C.

    Args:
        sugar_parts: Measures of sugar.
        water_parts: Measures of water, the same measure.
        bulk_g_per_ml: Bulk density of the sugar, 0.7 to 0.9; weigh a filled measure, since it
            moves a 1:1 syrup by 3 °Bx. `BULK_GRANULATED_G_PER_ML` is common.

    Raises:
        RefusedError: A part is not above zero, the bulk density is not that of sugar, or the syrup
            is beyond 75 °Bx.
    """
    _check_parts(sugar_parts, water_parts)
    within(
        bulk_g_per_ml,
        BULK_LIMITS,
        "Loose sugar weighs from {low} to {high} g/mL, and {got} g/mL is outside.",
        "Weigh a filled measure and divide the g by its mL.",
    )
    return _syrup(Basis.VOLUME, sugar_parts, water_parts, bulk_g_per_ml * 1000 / density(0))


def _syrup(basis: Basis, sugar_parts: float, water_parts: float, scale: float) -> SimpleSyrup:
    sugar = sugar_parts * scale
    brix = 100 * sugar / (sugar + water_parts)
    weight = density(brix)
    return SimpleSyrup(
        basis=basis,
        sugar_parts=sugar_parts,
        water_parts=water_parts,
        brix_mbx=round(brix * 1000),
        density_mg_per_l=round(weight * 100) * 10,
        sugar_mg_per_l=round(grams_per_litre_from_brix(brix) * 10) * 100,
        yield_ul_per_kg_water=round((1 + sugar / water_parts) / weight * 1e6) * 1000,
        warning=solubility_warning(brix),
    )


def _check_parts(sugar_parts: float, water_parts: float) -> None:
    for parts, of in ((sugar_parts, "sugar"), (water_parts, "water")):
        if not 0 < parts < math.inf:
            raise RefusedError(
                f"The parts of {of} must be a number above zero, and {figure(parts)} is not.",
                "Say how many parts of each, such as 3 of sugar to 2 of water.",
            )


def saturation_brix(temp_c: float = 20.0) -> float:
    """Return the °Brix at which water holds no more sucrose, not rounded.

    Raises:
        RefusedError: The temperature is not 0 to 80 °C.

    References:
        Vavrinecz 1962, as adopted by ICUMSA SPS-2; coefficients from memory.

    >>> round(saturation_brix(20), 1)
    66.7
    """
    return polynomial(SATURATION, check_temperature(temp_c))


def solubility_warning(brix: float, temp_c: float = 20.0) -> str | None:
    """Return a sentence when a syrup will crystallise at a temperature, or may; else None.

    Strengths in the sentence are rounded to 0.1 °Bx.
    """
    limit = saturation_brix(temp_c)
    about = f"at {figure(temp_c)} °C, where water holds about {figure(limit, 1)} °Bx"
    if brix > limit + SOURCES_DIFFER_BRIX:
        return f"A syrup of {figure(brix, 1)} °Bx will throw crystals {about}."
    if brix > limit - SOURCES_DIFFER_BRIX:
        return (
            f"A syrup of {figure(brix, 1)} °Bx is at the limit {about}; the sources differ by "
            f"{figure(SOURCES_DIFFER_BRIX, 1)} °Bx, and a little evaporation is enough."
        )
    return None
