"""Ethanol and water: density, strength by volume and by mass, US proof.

Guarantees: densities are those of OIML R 22, the general formula with all its terms, from -20 to
40 °C; every strength turns into the others and back. Results are floats and not rounded: whoever
shows one rounds it and says so. Refuses: strengths, temperatures and densities outside the table,
and mixtures that would be partly ice. True of ethanol and water alone: sugar or oil falsifies it.

"% vol" is the volume of pure ethanol in 100 volumes, both at the base temperature, which is
20 °C unless another is said.
"""

from enum import Enum
from functools import lru_cache

from ledger.errors import RefusedError
from ledger.science.liquids import oiml_r22
from ledger.science.ranges import Limits, figure, interpolate, within
from ledger.science.roots import solve

TEMPERATURES_C: Limits = (-20.0, 40.0)
"""What OIML R 22 covers, in °C."""
ETHANOL_KG_PER_M3 = 789.24
"""Density of pure ethanol at 20 °C by which OIML R 22 defines % vol.

The formula itself gives 789.239 there, so its % vol of pure ethanol is 1e-4 short of 100; strengths
in that gap are read as pure.
"""
FREEZING: tuple[tuple[float, float], ...] = (
    (0, 0.0),
    (5, -2.1),
    (10, -4.5),
    (15, -7.4),
    (20, -10.9),
    (25, -15.4),
    (30, -20.5),
)
"""% mass of ethanol and °C at which ice begins: from memory, of a handbook of physical constants.

Checked against CoolProp's ethanol solution within 0.5 °C.
"""


class Base(Enum):
    """The temperature for which % vol is meant and an alcoholmeter is made, in °C."""

    CELSIUS_20 = 20.0
    """OIML, European Union, pharmacopoeias."""
    FAHRENHEIT_60 = (60 - 32) / 1.8
    """United States: proof and the older tables."""


def density(mass_percent: float, temp_c: float = 20.0) -> float:
    """Return the density of ethanol and water in kg/m³ (the same number as g/L), not rounded.

    Raises:
        RefusedError: The strength is not 0 to 100 % mass, the temperature not -20 to 40 °C, or
            the mixture would be partly ice.

    References:
        OIML R 22:1975, general formula.

    >>> round(density(100, 40), 2)
    771.93
    """
    strength, temp_c = check_strength(mass_percent, "mass"), check_temperature(temp_c)
    _refuse_ice(strength, temp_c)
    return oiml_r22.density(strength / 100, temp_c)


def mass_percent_from_density(density_kg_per_m3: float, temp_c: float = 20.0) -> float:
    """Return the % mass of ethanol that has a density at a temperature, not rounded.

    Raises:
        RefusedError: No liquid mixture has that density at that temperature.

    >>> round(mass_percent_from_density(930.14, 20), 2)
    42.43
    """
    check_temperature(temp_c)
    limits = (oiml_r22.density(1, temp_c), oiml_r22.density(0, temp_c))
    within(
        density_kg_per_m3,
        limits,
        f"At {figure(temp_c)} °C ethanol and water have densities from {{low}} to {{high}} kg/m³, "
        "and {got} kg/m³ is outside.",
        "Check the reading and its temperature; sugar or oil in it falsifies a density.",
    )
    percent = 100 * solve(lambda p: oiml_r22.density(p, temp_c), density_kg_per_m3, 0, 1)
    _refuse_ice(percent, temp_c)
    return percent


def abv_from_mass_percent(mass_percent: float, base: Base = Base.CELSIUS_20) -> float:
    """Return the % vol, at the base temperature, of a % mass, not rounded.

    Raises:
        RefusedError: The strength is not 0 to 100 % mass.

    >>> round(abv_from_mass_percent(42.4258), 2)
    50.0
    """
    return min(100.0, _abv(check_strength(mass_percent, "mass") / 100, base))


@lru_cache(maxsize=256)  # it is solved by trial, and every draw on a lot of spirit asks for its own
def mass_percent_from_abv(abv: float, base: Base = Base.CELSIUS_20) -> float:
    """Return the % mass of a % vol at the base temperature, not rounded.

    Raises:
        RefusedError: The strength is not 0 to 100 % vol.

    >>> round(mass_percent_from_abv(96), 2)
    93.84
    """
    return 100 * solve(lambda p: _abv(p, base), check_strength(abv), 0, 1)


def abv_from_grams_per_100ml(grams: float) -> float:
    """Return the % vol at 20 °C of the g of ethanol in 100 mL at 20 °C, not rounded.

    Raises:
        RefusedError: 100 mL cannot hold that much.

    >>> round(abv_from_grams_per_100ml(31.57), 2)
    40.0
    """
    grams = within(
        grams,
        (0.0, ETHANOL_KG_PER_M3 / 10),
        "100 mL hold from {low} to {high} g of ethanol at 20 °C, and {got} g is outside.",
        "Check the number, and whether it is g in 100 mL or in 100 g.",
    )
    return grams * 1000 / ETHANOL_KG_PER_M3


def abv_on_base(abv: float, base: Base, wanted: Base) -> float:
    """Return a % vol of one base temperature as one of another, not rounded.

    >>> round(abv_on_base(50, Base.FAHRENHEIT_60, Base.CELSIUS_20), 2)
    50.06
    """
    return abv_from_mass_percent(mass_percent_from_abv(abv, base), wanted)


def us_proof_from_abv(abv: float) -> float:
    """Return the US proof, twice the % vol at 60 °F, of a % vol at 20 °C, not rounded.

    The trade's "twice the % vol" is the same to 0.3 proof.

    References:
        27 CFR 5.1 and 30.11, definitions of proof and proof gallon (from memory).

    >>> round(us_proof_from_abv(95), 1)
    190.0
    """
    return 2 * abv_on_base(abv, Base.CELSIUS_20, Base.FAHRENHEIT_60)


def abv_from_us_proof(proof: float) -> float:
    """Return the % vol at 20 °C of a US proof, not rounded.

    Raises:
        RefusedError: The proof is not 0 to 200.
    """
    proof = within(
        proof,
        (0.0, 200.0),
        "US proof runs from {low} to {high}, and {got} is outside.",
        "Read the label again; US proof is twice the % vol.",
    )
    return abv_on_base(proof / 2, Base.FAHRENHEIT_60, Base.CELSIUS_20)


def check_strength(percent: float, by: str = "vol") -> float:
    """Return a strength in per cent when it can be one.

    Raises:
        RefusedError: It is not 0 to 100.
    """
    return within(
        percent,
        (0.0, 100.0),
        f"A strength is from {{low}} to {{high}} % {by}, and {{got}} % {by} is outside.",
        "Read the label or the instrument again.",
    )


def check_temperature(temp_c: float) -> float:
    """Return a temperature in °C when the table covers it.

    Raises:
        RefusedError: It is not -20 to 40 °C.
    """
    return within(
        temp_c,
        TEMPERATURES_C,
        "The table of ethanol and water (OIML R 22) runs from {low} to {high} °C, "
        "and {got} °C is outside.",
        "Bring the liquid into that range, best to 20 °C, and read again.",
    )


def _abv(mass_fraction: float, base: Base) -> float:
    at_20 = base is Base.CELSIUS_20
    ethanol = ETHANOL_KG_PER_M3 if at_20 else oiml_r22.density(1, base.value)
    return 100 * mass_fraction * oiml_r22.density(mass_fraction, base.value) / ethanol


def _refuse_ice(mass_percent: float, temp_c: float) -> None:
    freezes = interpolate(FREEZING, mass_percent)
    if temp_c < freezes:
        raise RefusedError(
            f"Ethanol and water with {figure(mass_percent)} % mass of ethanol begin to freeze at "
            f"about {figure(freezes, 1)} °C, so at {figure(temp_c)} °C part of it is ice.",
            "Let it warm until the ice is gone, stir, and read again.",
        )
