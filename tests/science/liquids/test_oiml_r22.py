"""Ethanol, water and their mixtures against CoolProp, a library of independent equations.

Its ethanol solution "MEA" (Melinder 2010, secondary refrigerants) is given for up to 60 % mass and
40 °C, above freezing; no uncertainty is stated for it. The bands here are as wide as the two were
found to differ. Pure ethanol: Schroeder, Penoncello and Schroeder (2014), who state 0.2 % for the
density of the liquid; water: Wagner and Pruss (IAPWS-95), far closer than the band.
"""

import pytest

from ledger.science.liquids.alcohol import FREEZING, density
from ledger.science.ranges import interpolate

PRESSURE_PA = 101_325
ZERO_C_K = 273.15


def theirs(fluid: str, temp_c: float) -> float:
    from CoolProp.CoolProp import PropsSI  # takes a second to load

    return float(PropsSI("D", "T", ZERO_C_K + temp_c, "P", PRESSURE_PA, fluid))


@pytest.mark.parametrize("temp_c", [0, 5, 10, 15, 20, 25, 30, 35, 40])
@pytest.mark.parametrize("strength", [11, 15, 20, 30, 40, 50, 60])
def test_a_mixture_is_within_0_06_per_cent_above_zero(strength: float, temp_c: float) -> None:
    other = theirs(f"INCOMP::MEA[{strength / 100}]", temp_c)
    assert density(strength, temp_c) == pytest.approx(other, rel=6e-4)


@pytest.mark.parametrize("temp_c", [-20, -15, -10, -5])
@pytest.mark.parametrize("strength", [40, 45, 50, 55, 60])
def test_a_cold_mixture_is_within_0_15_per_cent(strength: float, temp_c: float) -> None:
    other = theirs(f"INCOMP::MEA[{strength / 100}]", temp_c)
    assert density(strength, temp_c) == pytest.approx(other, rel=1.5e-3)


@pytest.mark.parametrize("temp_c", [-20, -10, 0, 10, 20, 30, 40])
def test_pure_ethanol_is_within_the_band_stated_for_it(temp_c: float) -> None:
    assert density(100, temp_c) == pytest.approx(theirs("Ethanol", temp_c), rel=2e-3)


@pytest.mark.parametrize("temp_c", [0.01, 10, 20, 30, 40])
def test_water_is_within_1_in_100_000(temp_c: float) -> None:
    """OIML R 22 keeps the water of its time and the temperature scale of 1968."""
    assert density(0, temp_c) == pytest.approx(theirs("Water", temp_c), rel=1e-5)


@pytest.mark.parametrize("strength", [12, 15, 20, 25, 30])
def test_ice_begins_within_half_a_degree(strength: float) -> None:
    from CoolProp.CoolProp import AbstractState, iT_freeze

    state = AbstractState("INCOMP", "MEA")
    state.set_mass_fractions([strength / 100])
    freezes = state.trivial_keyed_output(iT_freeze) - ZERO_C_K
    assert interpolate(FREEZING, strength) == pytest.approx(freezes, abs=0.5)
