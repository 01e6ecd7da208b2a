"""Laws of ethanol and water, and what is refused."""

from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ledger.errors import RefusedError
from ledger.science.liquids import alcohol, oiml_r22
from ledger.science.liquids.alcohol import Base
from ledger.science.liquids.alcoholmeter import true_from_indicated

PER_CENT = st.floats(0, 100)


LIQUID_C = st.floats(0, 40)


BASES = st.sampled_from(Base)


GAP = 1.2e-4
"""How far the formula's % vol of pure ethanol is short of 100; see `ETHANOL_KG_PER_M3`."""


def term_by_term(p: float, t: float) -> float:
    """Write the general formula of OIML R 22 out as it is printed, 11+1+6+11+10+9+4+2 terms."""
    total = oiml_r22.A[0] + sum(oiml_r22.A[k - 1] * p ** (k - 1) for k in range(2, 13))
    total += sum(oiml_r22.B[k - 1] * (t - 20) ** k for k in range(1, 7))
    for i, m in zip(range(1, 6), (11, 10, 9, 4, 2), strict=True):
        total += sum(oiml_r22.C[i - 1][k - 1] * p**k * (t - 20) ** i for k in range(1, m + 1))
    return total


@given(p=st.floats(0, 1), t=st.floats(-20, 40))
def test_the_density_has_all_terms_of_the_printed_formula(p: float, t: float) -> None:
    assert oiml_r22.density(p, t) == pytest.approx(term_by_term(p, t), abs=1e-7)
    assert [len(row) for row in (oiml_r22.A, oiml_r22.B, *oiml_r22.C)] == [12, 6, 11, 10, 9, 4, 2]


@given(strength=PER_CENT, temp_c=LIQUID_C)
def test_a_density_leads_back_to_its_strength(strength: float, temp_c: float) -> None:
    found = alcohol.mass_percent_from_density(alcohol.density(strength, temp_c), temp_c)
    assert found == pytest.approx(strength, abs=1e-7)


@given(strength=PER_CENT, base=BASES)
def test_by_mass_and_by_volume_lead_back_to_each_other(strength: float, base: Base) -> None:
    by_volume = alcohol.abv_from_mass_percent(strength, base)
    assert alcohol.mass_percent_from_abv(by_volume, base) == pytest.approx(strength, abs=GAP)
    by_mass = alcohol.mass_percent_from_abv(strength, base)
    assert alcohol.abv_from_mass_percent(by_mass, base) == pytest.approx(strength, abs=GAP)


@given(abv=PER_CENT)
def test_proof_leads_back_to_the_strength(abv: float) -> None:
    assert alcohol.abv_from_us_proof(alcohol.us_proof_from_abv(abv)) == pytest.approx(abv, abs=GAP)


@given(abv=PER_CENT)
def test_grams_are_those_of_mass_and_density(abv: float) -> None:
    strength = alcohol.mass_percent_from_abv(abv)
    grams = strength / 100 * alcohol.density(strength) / 10
    assert alcohol.abv_from_grams_per_100ml(grams) == pytest.approx(abv, abs=GAP)


@given(abv=PER_CENT)
def test_proof_is_about_twice_the_strength(abv: float) -> None:
    assert alcohol.us_proof_from_abv(abv) == pytest.approx(2 * abv, abs=0.3)


@given(weaker=PER_CENT, stronger=PER_CENT, temp_c=LIQUID_C)
def test_stronger_is_lighter_and_more_by_volume(
    weaker: float, stronger: float, temp_c: float
) -> None:
    assume(stronger - weaker > 1e-6)
    assert alcohol.density(stronger, temp_c) < alcohol.density(weaker, temp_c)
    assert alcohol.abv_from_mass_percent(stronger) >= alcohol.abv_from_mass_percent(weaker)
    assert alcohol.mass_percent_from_abv(stronger) > alcohol.mass_percent_from_abv(weaker)


@given(strength=st.floats(30, 100), cooler=st.floats(-20, 40), warmer=st.floats(-20, 40))
def test_warmer_spirit_is_lighter(strength: float, cooler: float, warmer: float) -> None:
    assume(warmer - cooler > 1e-6)
    assert alcohol.density(strength, warmer) < alcohol.density(strength, cooler)


def test_the_rounding_of_sums_does_not_throw_a_pure_liquid_off_the_table() -> None:
    lightest = alcohol.density(100, 0)
    assert alcohol.mass_percent_from_density(lightest - 1e-9, 0) == 100
    assert alcohol.density(-1e-9) == alcohol.density(0)


def test_just_where_ice_begins_there_is_none_yet_and_below_it_there_is() -> None:
    """Figures of a handbook of physical constants, from memory; between two it is straight."""
    for mass_percent, temp_c in (
        *((5, -2.1), (10, -4.5), (15, -7.4), (20, -10.9), (25, -15.4)),
        *((2.5, -1.05), (27.5, -17.95)),
    ):
        assert alcohol.density(mass_percent, temp_c) > 950
        with pytest.raises(RefusedError):
            alcohol.density(mass_percent, temp_c - 0.1)


OUTSIDE = "The table of ethanol and water (OIML R 22) runs from −20 to 40 °C, and {} °C is outside."


RANGE_NEXT = " Bring the liquid into that range, best to 20 °C, and read again."


STRENGTH = "A strength is from 0 to 100 % {}, and {} is outside."


STRENGTH_NEXT = " Read the label or the instrument again."


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        pytest.param(lambda: alcohol.density(50, 40.001), OUTSIDE.format("40.001") + RANGE_NEXT),
        pytest.param(lambda: alcohol.density(90, -21), OUTSIDE.format("−21") + RANGE_NEXT),
        pytest.param(
            lambda: alcohol.mass_percent_from_density(900, 41), OUTSIDE.format("41") + RANGE_NEXT
        ),
        pytest.param(lambda: alcohol.density(50, float("nan")), OUTSIDE.format("nan") + RANGE_NEXT),
        pytest.param(
            lambda: alcohol.density(-0.5), STRENGTH.format("mass", "−0.5 % mass") + STRENGTH_NEXT
        ),
        pytest.param(
            lambda: alcohol.mass_percent_from_abv(100.5),
            STRENGTH.format("vol", "100.5 % vol") + STRENGTH_NEXT,
        ),
        pytest.param(
            lambda: alcohol.mass_percent_from_density(700, 20),
            "At 20 °C ethanol and water have densities from 789.24 to 998.2 kg/m³, and 700 kg/m³ "
            "is outside. Check the reading and its temperature; sugar or oil in it falsifies a "
            "density.",
        ),
        pytest.param(
            lambda: alcohol.density(10, -10),
            "Ethanol and water with 10 % mass of ethanol begin to freeze at about −4.5 °C, so at "
            "−10 °C part of it is ice. Let it warm until the ice is gone, stir, and read again.",
        ),
        pytest.param(
            lambda: alcohol.abv_from_us_proof(201),
            "US proof runs from 0 to 200, and 201 is outside. "
            "Read the label again; US proof is twice the % vol.",
        ),
        pytest.param(
            lambda: alcohol.abv_from_grams_per_100ml(80),
            "100 mL hold from 0 to 78.92 g of ethanol at 20 °C, and 80 g is outside. "
            "Check the number, and whether it is g in 100 mL or in 100 g.",
        ),
        pytest.param(
            lambda: true_from_indicated(99.5, 0),
            "At 0 °C ethanol and water have densities from 806.22 to 999.84 kg/m³, and 792.19 "
            "kg/m³ is outside. Check the reading and its temperature; sugar or oil in it "
            "falsifies a density.",
        ),
    ],
)
def test_what_lies_outside_the_table_is_refused_in_a_sentence(
    asked: Callable[[], float], sentence: str
) -> None:
    with pytest.raises(RefusedError) as caught:
        asked()
    assert str(caught.value) == sentence
