"""What glass and air do to a reading."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.liquids.hydrometer import (
    shown_density,
    specific_gravity,
    specific_gravity_in_air,
    true_density,
    weight_in_air,
)


def test_a_litre_of_water_seems_lighter_in_air() -> None:
    """997.15 g at 20 °C, the usual figure for calibrating glassware (ISO 4787): from memory."""
    assert weight_in_air(998.2) == pytest.approx(997.15, abs=0.005)


def test_glass_grows_by_25_in_a_million_a_degree() -> None:
    """OIML R 22, Table VIII: from memory."""
    assert shown_density(1000, 30) == pytest.approx(1000.25, abs=1e-9)


@given(density=st.floats(700, 1400), temp_c=st.floats(-20, 80), base_c=st.floats(15, 20))
def test_shown_and_true_lead_back_to_each_other(
    density: float, temp_c: float, base_c: float
) -> None:
    shown = shown_density(density, temp_c, base_c)
    assert true_density(shown, temp_c, base_c) == pytest.approx(density, rel=1e-12)
    assert (shown > density) == (shown != density and temp_c > base_c)


@given(st.floats(700, 1400))
def test_air_moves_a_specific_gravity_away_from_water(density: float) -> None:
    plain, in_air = specific_gravity(density, 998.2), specific_gravity_in_air(density, 998.2)
    assert abs(in_air - 1) >= abs(plain - 1)
    assert in_air == pytest.approx(plain, abs=6e-4)
