"""Ethanol and water against every published figure of alcohol_check_points.csv.

The columns `source` and `how_obtained` of the file name each figure's source; those with "memory"
are from memory and no independent evidence.
"""

import re
from collections.abc import Callable

import pytest

from ledger.science.liquids.alcohol import (
    Base,
    abv_from_grams_per_100ml,
    abv_from_mass_percent,
    density,
    mass_percent_from_abv,
    us_proof_from_abv,
)
from ledger.science.liquids.hydrometer import specific_gravity_in_air, weight_in_air
from tests.science.published import rows

POINTS = rows("alcohol_check_points.csv")
F60 = Base.FAHRENHEIT_60


def gravity_in_air(abv_60f: float, temp_c: float) -> float:
    strength = mass_percent_from_abv(abv_60f, F60)
    return specific_gravity_in_air(density(strength, temp_c), density(0, temp_c))


SUMS: dict[str, Callable[..., float]] = {
    "density": lambda p, t: density(100 * p, t),
    "% w/w from % v/v (15.56 C)": lambda abv, _: mass_percent_from_abv(abv, F60),
    "% v/v (15.56 C) from % w/w": lambda strength: abv_from_mass_percent(strength, F60),
    "SG in air 25/25": lambda abv, _: gravity_in_air(abv, 25),
    "SG in air 15.56/15.56": lambda abv, _: gravity_in_air(abv, F60.value),
    "APPARENT density (weight in air)": lambda abv, _: weight_in_air(
        density(mass_percent_from_abv(abv))
    ),
    "% w/w from % v/v (20 C)": mass_percent_from_abv,
    "density from % v/v (20 C)": lambda abv: density(mass_percent_from_abv(abv)),
}
OFF = {
    # Half of the last printed place, and a hair for a figure that falls between two.
    "density": 0.0051,
    "density from % v/v (20 C)": 0.0051,
    "% w/w from % v/v (20 C)": 0.0051,
    "% w/w from % v/v (15.56 C)": 0.0051,
    "% v/v (15.56 C) from % w/w": 0.0051,
    # The table is of 1913, its last figure within one.
    "SG in air 25/25": 0.0001,
    "SG in air 15.56/15.56": 0.0001,
    # Limits given as strength and as density, each to 0.1: 0.05 % vol alone is 0.1 kg/m³.
    "APPARENT density (weight in air)": 0.1,
}
"""How far off each kind of figure may be, in its own unit."""


def numbers(text: str) -> list[float]:
    return [float(number) for number in re.findall(r"-?[0-9]+(?:\.[0-9]+)?", text)]


@pytest.mark.parametrize("row", POINTS, ids=lambda row: f"{row['quantity']}, {row['conditions']}")
def test_a_published_figure_is_met(row: dict[str, str]) -> None:
    found = SUMS[row["quantity"]](*numbers(row["conditions"]))
    assert found == pytest.approx(float(row["published"]), abs=OFF[row["quantity"]])


def test_every_kind_of_published_figure_has_a_sum() -> None:
    assert {row["quantity"] for row in POINTS} == SUMS.keys() == OFF.keys()


def test_us_proof_spirit_is_100_proof_and_its_ethanol_has_the_gravity_of_the_regulation() -> None:
    """27 CFR 30.11: 50 % vol at 60 °F of ethanol of specific gravity 0.7939; from memory."""
    half = abv_from_mass_percent(mass_percent_from_abv(50, F60))
    assert us_proof_from_abv(half) == pytest.approx(100, abs=1e-9)
    assert density(100, F60.value) / density(0, F60.value) == pytest.approx(0.7939, abs=0.0001)


def test_forty_per_cent_by_volume_is_its_grams_in_100_ml() -> None:
    """31.57 g/100 mL at 40 % vol: a Belgian pharmacy page, seen."""
    assert abv_from_grams_per_100ml(31.57) == pytest.approx(40, abs=0.007)
