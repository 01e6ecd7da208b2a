"""Simple syrup: the compendial ones, the shares by weight and by volume, and what is refused.

Sources are those of the column `source` of syrups.csv; its rows marked "computed" are not used.
"""

from collections.abc import Callable
from fractions import Fraction
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import RefusedError
from ledger.science.liquids import sucrose
from ledger.science.liquids.syrups import (
    BULK_GRANULATED_G_PER_ML,
    BULK_LIMITS,
    SOURCES_DIFFER_BRIX,
    Basis,
    SimpleSyrup,
    by_volume,
    by_weight,
    saturation_brix,
    solubility_warning,
)
from tests.science.published import rows

PARTS = st.floats(0.01, 1000)
USP_BRIX = sucrose.brix_from_grams_per_litre(850, 25)
BP_BRIX = 200 / 3
USED = {
    "Syrup NF (USP28/29/32)",
    "Syrup BP (1898/1911 practice)",
    "Syrup BP/IP (modern)",
    "Sucrose solubility 20 C",
    "Sucrose solubility, ICUMSA SPS-2/Vavrinecz",
    "Bulk density granulated sugar",
}


def test_every_published_row_is_used() -> None:
    published = {
        row["item"]
        for row in rows("syrups.csv")
        if row["how"] != "computed" and "SPS-4" not in row["source"]
    }
    assert published == USED


def test_usp_syrup_of_850_g_in_a_litre_has_at_least_the_gravity_required() -> None:
    """USP 28/29/32, Syrup NF: specific gravity not less than 1.30."""
    assert sucrose.specific_gravity_from_brix(USP_BRIX, 25, in_air=True) >= 1.30


def test_usp_syrup_takes_the_water_that_is_poured() -> None:
    """USP, Syrup NF: about 450 mL of water is poured through 850 g to make a litre."""
    water_g = sucrose.density(USP_BRIX, 25) - 850
    assert water_g / sucrose.density(0, 25) * 1000 == pytest.approx(450, rel=0.04)


def test_bp_syrup_has_the_gravity_and_the_measure_of_its_time() -> None:
    """EB11 and Cooley: 6 of sugar, water to weigh 9, measuring about 7, of gravity 1.33."""
    gravity = sucrose.specific_gravity_from_brix(100 * 6 / 9)
    assert gravity == pytest.approx(1.33, abs=0.005)
    assert 9 / gravity == pytest.approx(7, abs=0.5)


def test_bp_syrup_of_today_weighs_what_it_should() -> None:
    """BP/IP: 667 g to 1000 g; weight per mL 1.315 to 1.333 g, from memory."""
    assert 1.315 <= sucrose.density(BP_BRIX) / 1000 <= 1.333


@pytest.mark.parametrize(
    "grams_in_100_g_of_water", [203.9, 200.7], ids=["Herzfeld, Browne", "Russian table"]
)
def test_saturation_lies_within_what_the_sources_differ_by(grams_in_100_g_of_water: float) -> None:
    """Mohos, Appendix 2, and k-mashzavod.narod.ru: 67.09 and 66.74 % at 20 °C."""
    published = 100 * grams_in_100_g_of_water / (100 + grams_in_100_g_of_water)
    assert saturation_brix(20) == pytest.approx(published, abs=SOURCES_DIFFER_BRIX)


def test_a_published_density_of_saturated_syrup_is_not_met_and_stays_off_by_a_quarter() -> None:
    """Antokolskaya 1964, in Mohos, has 1332.7 kg/m³ at 67.09 %; SPS-4 is 0.25 % below it."""
    off = 1332.7 / sucrose.density(67.09) - 1
    assert off == pytest.approx(0.0025, abs=0.0001)


def test_bulk_densities_are_those_found() -> None:
    """biologyinsights.com and megacalc.org (secondary): 0.70 to 0.90; 200 g in a cup of 236.59."""
    assert BULK_LIMITS == (0.70, 0.90)
    assert abs(BULK_GRANULATED_G_PER_ML - 200 / 236.59) < 0.006


@pytest.mark.parametrize(
    ("sugar", "water", "brix_mbx"), [(1, 1, 50_000), (3, 2, 60_000), (2, 1, 66_667)]
)
def test_by_weight_the_strength_is_plain_arithmetic(sugar: int, water: int, brix_mbx: int) -> None:
    found = by_weight(sugar, water)
    assert (found.basis, found.brix_mbx) == (Basis.WEIGHT, brix_mbx)
    assert found.brix_mbx == round(Fraction(100_000 * sugar, sugar + water))


@pytest.mark.parametrize(("sugar", "water", "brix"), [(1, 1, 46), (3, 2, 56), (2, 1, 63)])
def test_by_volume_it_is_weaker_as_the_trade_has_it(sugar: int, water: int, brix: int) -> None:
    """Common practice, no source: 46, 56 and 63 °Bx, each "about"."""
    found = by_volume(sugar, water, BULK_GRANULATED_G_PER_ML)
    assert found.basis is Basis.VOLUME
    assert found.brix_mbx / 1000 == pytest.approx(brix, abs=0.5)


@given(sugar=PARTS, share=st.floats(0.4, 10), bulk=st.floats(*BULK_LIMITS))
def test_the_same_parts_by_volume_are_weaker_than_by_weight(
    sugar: float, share: float, bulk: float
) -> None:
    weighed, measured = by_weight(sugar, sugar * share), by_volume(sugar, sugar * share, bulk)
    assert measured.brix_mbx < weighed.brix_mbx
    assert (str(weighed.basis), str(measured.basis)) == ("by weight", "by volume")


@given(sugar=PARTS, share=st.floats(0.4, 10))
def test_mass_is_conserved_from_parts_to_litres(sugar: float, share: float) -> None:
    found = by_weight(sugar, sugar * share)
    kg_from_1_kg_water = found.density_mg_per_l / 1e6 * found.yield_ul_per_kg_water / 1e6
    assert kg_from_1_kg_water == pytest.approx(1 + 1 / share, rel=1e-3)
    sugar_kg = found.sugar_mg_per_l / 1e6 * found.yield_ul_per_kg_water / 1e6
    assert sugar_kg == pytest.approx(1 / share, rel=1e-3)


@given(brix=st.floats(0, 75), temp_c=st.floats(0, 80))
def test_a_warning_comes_only_near_or_above_saturation(brix: float, temp_c: float) -> None:
    above = brix - saturation_brix(temp_c)
    told = solubility_warning(brix, temp_c)
    assert (told is not None) == (above > -SOURCES_DIFFER_BRIX)


@given(cooler=st.floats(0, 80), warmer=st.floats(0, 80))
def test_warm_water_holds_no_less(cooler: float, warmer: float) -> None:
    cold, warm = sorted((cooler, warmer))
    assert saturation_brix(cold) <= saturation_brix(warm)


def test_the_warning_is_a_sentence() -> None:
    assert by_weight(3, 2).warning is None
    assert by_weight(2, 1).warning == (
        "A syrup of 66.7 °Bx is at the limit at 20 °C, where water holds about 66.7 °Bx; the "
        "sources differ by 0.4 °Bx, and a little evaporation is enough."
    )
    assert solubility_warning(66.7, 4) == (
        "A syrup of 66.7 °Bx will throw crystals at 4 °C, where water holds about 64.8 °Bx."
    )


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        (
            lambda: by_weight(0, 1),
            "The parts of sugar must be a number above zero, and 0 is not. "
            "Say how many parts of each, such as 3 of sugar to 2 of water.",
        ),
        (
            lambda: by_weight(inf, 1),
            "The parts of sugar must be a number above zero, and inf is not. "
            "Say how many parts of each, such as 3 of sugar to 2 of water.",
        ),
        (
            lambda: by_volume(1, -2, 0.85),
            "The parts of water must be a number above zero, and −2 is not. "
            "Say how many parts of each, such as 3 of sugar to 2 of water.",
        ),
        (
            lambda: by_volume(1, 1, 1.59),
            "Loose sugar weighs from 0.7 to 0.9 g/mL, and 1.59 g/mL is outside. "
            "Weigh a filled measure and divide the g by its mL.",
        ),
        (
            lambda: by_weight(4, 1),
            "The table of sugar and water (ICUMSA SPS-4) is used from 0 to 75 °Bx, and 80 °Bx is "
            "outside. Check the number; °Brix is g of sugar in 100 g of syrup.",
        ),
    ],
    ids=["no sugar", "no end of sugar", "negative water", "solid sugar", "too strong"],
)
def test_what_is_no_syrup_is_refused(asked: Callable[[], SimpleSyrup], sentence: str) -> None:
    with pytest.raises(RefusedError) as caught:
        asked()
    assert str(caught.value) == sentence
