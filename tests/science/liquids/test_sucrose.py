"""Sucrose and water: published densities, laws, and what is refused."""

from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ledger.errors import RefusedError
from ledger.science.liquids import sucrose
from ledger.science.liquids.hydrometer import shown_density
from tests.science.published import rows

HANDBOOK = "CRC_Handbook_rho20_g_mL (seen via secondary page)"


BUREAU = "NBS_C440_rho20/4 (memory)"


WATER_4C_KG_PER_M3 = 999.972
"""Density of water at 4 °C, from memory."""


DENSITIES = rows("sucrose_density.csv")


GERLACH = rows("sucrose_gerlach_17C5.csv")


BRIX = st.floats(0, 75)


TEMPS_C = st.floats(0, 80)


def having(column: str) -> list[tuple[float, float]]:
    return [
        (float(row["mass_percent_sucrose"]), float(row[column])) for row in DENSITIES if row[column]
    ]


@pytest.mark.parametrize(("brix", "published"), having(HANDBOOK))
def test_the_density_is_that_of_the_handbook(brix: float, published: float) -> None:
    """CRC Handbook, by way of a secondary page, to 4 decimals; at 40 °Bx it is 1.2 in the last."""
    assert sucrose.density(brix) / 1000 == pytest.approx(published, abs=0.00013)


@pytest.mark.parametrize(("brix", "published"), having(BUREAU))
def test_the_density_is_near_that_of_the_older_official_table(
    brix: float, published: float
) -> None:
    """NBS Circular C440 at 20/4 °C: from memory. The newer SPS-4 is up to 0.03 % denser."""
    found = sucrose.density(brix) / WATER_4C_KG_PER_M3
    assert found == pytest.approx(published, rel=3e-4)


@pytest.mark.parametrize("row", GERLACH, ids=lambda row: f"{row['mass_percent']} %")
def test_the_specific_gravity_is_near_that_of_an_old_table(row: dict[str, str]) -> None:
    """Gerlach, in Cooley's Cyclopaedia (1880), at 17.5 °C; SPS-4 is up to 0.07 % lighter."""
    found = sucrose.specific_gravity_from_brix(float(row["mass_percent"]), 17.5)
    assert found == pytest.approx(float(row["SG_17.5/17.5_published"]), rel=7e-4)


def test_the_kept_tables_hold_published_figures() -> None:
    assert (len(having(HANDBOOK)), len(having(BUREAU)), len(GERLACH)) == (4, 6, 9)


@given(brix=BRIX, temp_c=TEMPS_C)
def test_every_measure_leads_back_to_the_strength(brix: float, temp_c: float) -> None:
    back = pytest.approx(brix, abs=1e-7)
    assert sucrose.brix_from_density(sucrose.density(brix, temp_c), temp_c) == back
    grams = sucrose.grams_per_litre_from_brix(brix, temp_c)
    assert sucrose.brix_from_grams_per_litre(grams, temp_c) == back
    for in_air in (True, False):
        gravity = sucrose.specific_gravity_from_brix(brix, temp_c, 20, in_air=in_air)
        found = sucrose.brix_from_specific_gravity(gravity, temp_c, 20, in_air=in_air)
        assert found == back


@given(weaker=BRIX, stronger=BRIX, temp_c=TEMPS_C)
def test_stronger_is_denser_and_sweeter(weaker: float, stronger: float, temp_c: float) -> None:
    assume(stronger - weaker > 1e-6)
    assert sucrose.density(stronger, temp_c) > sucrose.density(weaker, temp_c)
    strong, weak = (sucrose.grams_per_litre_from_brix(b, temp_c) for b in (stronger, weaker))
    assert strong > weak


@given(brix=BRIX, cooler=st.floats(5, 80), warmer=st.floats(5, 80))
def test_warmer_syrup_is_lighter(brix: float, cooler: float, warmer: float) -> None:
    assume(warmer - cooler > 1e-3)
    assert sucrose.density(brix, warmer) < sucrose.density(brix, cooler)


@given(brix=st.floats(10, 70), temp_c=st.floats(5, 40))
def test_a_reading_leads_back_to_the_true_strength(brix: float, temp_c: float) -> None:
    shown = sucrose.brix_from_density(shown_density(sucrose.density(brix, temp_c), temp_c))
    assert sucrose.true_from_indicated(shown, temp_c) == pytest.approx(brix, abs=1e-7)


@given(brix=BRIX)
def test_at_20_degrees_a_hydrometer_reads_true(brix: float) -> None:
    assert sucrose.true_from_indicated(brix, 20) == pytest.approx(brix, abs=1e-7)


@given(brix=st.floats(10, 70))
def test_a_warm_syrup_reads_weaker_than_it_is(brix: float) -> None:
    """About 0.3 to 0.4 °Bx at 25 °C: common practice, no source."""
    assert 0.25 < sucrose.true_from_indicated(brix, 25) - brix < 0.45


TABLE = "The table of sugar and water (ICUMSA SPS-4) "


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        (
            lambda: sucrose.density(75.5),
            TABLE + "is used from 0 to 75 °Bx, and 75.5 °Bx is outside. "
            "Check the number; °Brix is g of sugar in 100 g of syrup.",
        ),
        (
            lambda: sucrose.density(50, 95),
            TABLE + "runs from 0 to 80 °C, and 95 °C is outside. "
            "Bring the syrup into that range, best to 20 °C, and read again.",
        ),
        (
            lambda: sucrose.brix_from_density(990),
            "At 20 °C sugar and water have densities from 998.2 to 1379.37 kg/m³, and 990 kg/m³ "
            "is outside. Check the reading and its temperature; alcohol in it falsifies a density.",
        ),
        (
            lambda: sucrose.brix_from_grams_per_litre(1100),
            "A litre of syrup holds from 0 to 1034.53 g of sugar (75 °Bx), and 1100 g is outside. "
            "Check the number, and whether it is g in a litre or in a kilogram.",
        ),
        (
            lambda: sucrose.brix_from_specific_gravity(1290),
            "Syrups up to 75 °Bx have specific gravities from 1 to 1.38, and 1290 is outside. "
            "Check the reading, and that it is a specific gravity (water is 1).",
        ),
    ],
    ids=["too strong", "too hot", "too light", "too many grams", "a density"],
)
def test_what_lies_outside_the_table_is_refused_in_a_sentence(
    asked: Callable[[], float], sentence: str
) -> None:
    with pytest.raises(RefusedError) as caught:
        asked()
    assert str(caught.value) == sentence


def test_a_gravity_in_air_is_that_of_weights_in_air_and_else_of_true_densities() -> None:
    """By OIML R 33's air of 1.2 kg/m³: (1286.61 - 1.2)/(998.2 - 1.2) of 60 °Bx at 20 °C (SPS-4)."""
    in_air, true = (
        sucrose.specific_gravity_from_brix(60, in_air=in_air) for in_air in (True, False)
    )
    assert in_air == pytest.approx((1286.61 - 1.2) / (998.20 - 1.2), abs=2e-5)
    assert true == pytest.approx(1286.61 / 998.20, abs=2e-5)
    assert in_air - true > 3e-4
    assert sucrose.brix_from_specific_gravity(in_air, in_air=True) == pytest.approx(60, abs=1e-7)
    at_4 = sucrose.specific_gravity_from_brix(60, 20, 4)
    assert at_4 == pytest.approx(1286.61 / 999.97, abs=2e-5)
