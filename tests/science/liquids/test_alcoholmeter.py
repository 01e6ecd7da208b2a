"""What an alcoholmeter shows in a liquid that is not at its base temperature."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.liquids import alcohol
from ledger.science.liquids.alcohol import Base
from ledger.science.liquids.alcoholmeter import indicated_from_true, true_from_indicated

BASES = st.sampled_from(Base)


@pytest.mark.parametrize(
    ("fahrenheit", "indicated"), [(80, 92.7), (30, 85.6)], ids=["warm", "cold"]
)
def test_a_warm_liquid_flatters_as_the_old_table_says(fahrenheit: float, indicated: float) -> None:
    """Encyclopedia of Practical Receipts, Alcoholmetry, a table at 60 °F: a liquid truly 90 %."""
    temp_c = (fahrenheit - 32) / 1.8
    found = indicated_from_true(90, temp_c, Base.FAHRENHEIT_60)
    assert found == pytest.approx(indicated, abs=0.1)


@pytest.mark.parametrize(("temp_c", "true"), [(15, 42.0), (25, 38.0)])
def test_a_reading_of_40_is_corrected_as_in_the_official_table(temp_c: float, true: float) -> None:
    """OIML R 22, Table VIII: from memory, as is "0.4 % vol a °C" (common practice, no source)."""
    assert true_from_indicated(40, temp_c) == pytest.approx(true, abs=0.05)


@given(abv=st.floats(15, 80), temp_c=st.floats(5, 35), base=BASES)
def test_a_reading_leads_back_to_the_true_strength(abv: float, temp_c: float, base: Base) -> None:
    shown = indicated_from_true(abv, temp_c, base)
    assert true_from_indicated(shown, temp_c, base) == pytest.approx(abv, abs=1e-6)


@given(abv=st.floats(0, 99.9), base=BASES)
def test_at_its_base_temperature_an_alcoholmeter_reads_true(abv: float, base: Base) -> None:
    assert true_from_indicated(abv, base.value, base) == pytest.approx(abv, abs=1e-6)


def test_the_glass_of_the_instrument_counts() -> None:
    """At 40 °C the glass has grown by 5 in 10 000, which is worth about 0.3 % vol at 40 % vol."""
    true = alcohol.density(alcohol.mass_percent_from_abv(40))
    without = alcohol.mass_percent_from_density(true, 40)
    difference = true_from_indicated(40, 40) - alcohol.abv_from_mass_percent(without)
    assert 0.2 < difference < 0.4
