"""Published formulas as worked examples: what a lot made by them contains.

Sources are those of compendial_formulas.csv, syrups.csv and alcohol_dilution.csv; the columns and
rows that were computed are used only where a test says that it is a cross-check.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.science.contents.composition import Contents, add, measured, scaled
from ledger.science.liquids.dilution import dilute
from ledger.science.liquids.hydrometer import specific_gravity_in_air
from tests.science.liquids.liquid_rows import (
    ML,
    SUGAR,
    WATER,
    oil,
    oil_percent,
    some,
    spirit,
    total,
)
from tests.science.published import rows

ALCOHOL = 94.9
"""% vol of Alcohol USP, not less than: from memory."""
FORMULAS = {(row["name"], row["edition"]): row for row in rows("compendial_formulas.csv")}
LEAST_OF_AN_EXTRACT = {"lemon-oil": 5, "mint-oil": 3, "wintergreen-oil": 3}
"""mL of oil in 100 mL, US standard of 1906; peppermint seen, the other two from memory."""


def formula(name: str, edition: str) -> str:
    """Return the quantities as printed, so that a test stands on what the row says."""
    return FORMULAS[name, edition]["quantities"]


def essence(code: str, density: float, oil_ml: float, abv: float, to_ml: float) -> Contents:
    """Return oil made up to a volume with spirit."""
    spirits = some(spirit(abv), (to_ml - oil_ml) * ML)
    return made_up(some(oil(code, density), oil_ml * ML), spirits, to_ml * ML)


def made_up(one: Contents, other: Contents, volume_ul: float) -> Contents:
    """Return a liquid made up to a volume with another."""
    return measured(add(one, other), volume_ul, is_loss=False)


def kg_per_m3(liquid: Contents) -> float:
    return 1000 * liquid.mass_mg / liquid.volume_ul


def test_spirit_of_lemon_is_an_extract_of_the_standard() -> None:
    """50 mL to 1000 mL (USP 1890); lemon oil 0.849 to 0.855 (USP)."""
    assert "oil of lemon 50 mL" in formula("Spirit of Lemon", "USP 1890 (King 1898)")
    found = essence("lemon-oil", 0.853, 50, ALCOHOL, 1000)
    assert oil_percent(found, "lemon-oil") >= LEAST_OF_AN_EXTRACT["lemon-oil"]
    assert found.abv == pytest.approx(0.95 * ALCOHOL, abs=0.01)


def test_spirit_of_wintergreen_is_an_extract_of_the_standard() -> None:
    """50 mL and 950 mL (USP 1890); oil 1.176 to 1.182 (USP): 59 g a litre of the oil."""
    assert "gaultheria 50 mL; alcohol 950 mL" in formula(
        "Spirit of Gaultheria (wintergreen)", "USP 1890"
    )
    found = add(some(oil("wintergreen-oil", 1.179), 50 * ML), some(spirit(ALCOHOL), 950 * ML))
    assert oil_percent(found, "wintergreen-oil") >= LEAST_OF_AN_EXTRACT["wintergreen-oil"]
    grams = 1000 * found.oils()["wintergreen-oil"].mass_mg / found.volume_ul
    assert 50 * 1.176 <= grams <= 50 * 1.182
    assert found.abv == pytest.approx(0.95 * ALCOHOL, abs=0.01)


def test_peppermint_spirit_has_the_oil_that_its_monograph_asks_for() -> None:
    """USP35: oil 100 mL to 1000 mL; oil content 9.0 to 11.0 mL in 100 mL."""
    assert "oil 100 mL" in formula("Peppermint Spirit", "USP35-NF30")
    assert "9.0-11.0 mL/100 mL" in FORMULAS["Peppermint Spirit", "USP35-NF30"]["process_notes"]
    found = essence("mint-oil", 0.902, 100, ALCOHOL, 1000)
    assert 9.0 <= oil_percent(found, "mint-oil") <= 11.0


@pytest.mark.parametrize("leaf_water_ml", [10, 20, 40])
def test_peppermint_spirit_has_the_alcohol_of_its_monograph_with_the_water_of_its_leaf(
    leaf_water_ml: float,
) -> None:
    """USP35: alcohol 79.0 to 85.0 %. 10 g of leaf, wetted and pressed, goes into 900 mL of alcohol.

    That it holds one to four times its weight of water is common practice, no source. Of the oil
    and the alcohol alone the sum is 85.4 %, above the range.
    """
    liquor = add(some(spirit(ALCOHOL), 900 * ML), some(WATER, leaf_water_ml * ML))
    mint = some(oil("mint-oil", 0.902), 100 * ML)
    found = add(mint, scaled(liquor, 900 * ML / liquor.volume_ul))
    assert 79.0 <= (found.abv) <= 85.0
    dry = add(mint, some(spirit(ALCOHOL), 900 * ML))
    assert dry.abv == pytest.approx(85.4, abs=0.05)


def test_spirit_of_peppermint_of_1914_is_nine_tenths_of_90_per_cent() -> None:
    """BP 1914: oil 100 mL, alcohol (90 per cent) to 1000 mL."""
    assert "alcohol (90 %) to 1000 mL" in formula("Spirit of Peppermint", "BP 1914")
    found = essence("mint-oil", 0.902, 100, 90, 1000)
    assert found.abv == pytest.approx(81, abs=0.01)
    assert oil_percent(found, "mint-oil") == pytest.approx(10)


def test_aromatic_spirit_dilutes_the_compound_spirit_of_orange() -> None:
    """65 mL in 935 mL of alcohol (NF); the compound spirit: 275 mL of four oils to 1000 mL (USP).

    Orange oil in it is 20 % of 6.5 %: an essence that is blended carries its oils along.
    """
    assert "orange 200, lemon 50" in formula("Compound Spirit of Orange", "USP 1890 / USP IX")
    assert "orange 65 mL; deodorized alcohol 935 mL" in formula("Aromatic Spirit", "NF")
    parts = {"orange-oil": 200, "lemon-oil": 50, "coriander-oil": 20, "anise-oil": 5}
    oils = total(*(some(oil(code, 0.85), amount * ML) for code, amount in parts.items()))
    compound = add(oils, some(spirit(ALCOHOL), 725 * ML))
    aromatic = add(scaled(compound, 65 * ML / compound.volume_ul), some(spirit(ALCOHOL), 935 * ML))
    for code, amount in parts.items():
        assert oil_percent(aromatic, code) == pytest.approx(0.0065 * amount, rel=1e-3)
    assert aromatic.abv == pytest.approx(ALCOHOL * (1 - 0.065 * 0.275), abs=0.01)


def test_syrup_of_850_g_to_a_litre_is_as_heavy_as_its_monograph_says() -> None:
    """USP/NF Syrup: specific gravity at least 1.30; about 450 mL of water are poured."""
    assert "850 g" in formula("Syrup", "USP/NF (all editions from 1890)")
    sugar = some(SUGAR, 850_000)
    water_ml = 1000 - 850 * 0.62
    found = made_up(sugar, some(WATER, water_ml * ML), 1_000_000)
    assert found.sugar_g_per_l == pytest.approx(850)
    poured = total(some(WATER, 450 * ML), sugar)
    assert specific_gravity_in_air(kg_per_m3(poured), 998.2) >= 1.30
    assert poured.volume_ul == pytest.approx(985_000, abs=5_000)


def test_syrup_of_two_thirds_sugar_weighs_what_the_pharmacopoeias_say() -> None:
    """BP/IP: 667 g to 1000 g; 66.7 % w/w seen, weight per mL 1.315 to 1.333 g from memory."""
    found = add(some(SUGAR, 667_000), some(WATER, 333_000 / 0.9982))
    assert found.sugar_percent_mass == pytest.approx(66.7, abs=0.01)
    assert 1315 <= kg_per_m3(found) <= 1333


@pytest.mark.parametrize(
    "row",
    [row for row in rows("alcohol_dilution.csv") if row["published_stock_mL"]],
    ids=lambda row: f"to {row['target_abv']} %",
)
def test_the_dilute_ethanols_of_the_pharmacopoeia_have_their_strength(row: dict[str, str]) -> None:
    """BP Dilute Ethanols: mL of Ethanol (96 per cent) made up to 1000 mL with water, at 20 °C.

    Its figures are whole mL, so a strength is met to a tenth of a per cent. The water is what the
    sums ask for; that of the mixture then has the volume too.
    """
    stock = some(spirit(float(row["stock_abv"])), float(row["published_stock_mL"]) * ML)
    water = some(WATER, float(row["water_mL"]) * ML)
    for found in (made_up(stock, water, 1_000_000), add(stock, water)):
        assert found.abv == pytest.approx(float(row["target_abv"]), abs=0.1)
        assert found.volume_ul == pytest.approx(1_000_000, abs=1_000)


@given(stock=st.floats(50, 97), target=st.floats(5, 45), final_ul=st.integers(100_000, 10_000_000))
def test_a_dilution_that_was_told_is_the_lot_that_is_made(
    stock: float, target: float, final_ul: int
) -> None:
    told = dilute(stock, target, Quantity(final_ul, Measure.UL, ""))
    made = add(some(spirit(stock), told.stock_ul), some(WATER, told.water_ul))
    assert made.volume_ul == pytest.approx(told.check_ul, rel=1e-4)
    assert made.abv == pytest.approx(told.check_abv, abs=0.002)


@pytest.mark.parametrize(
    ("syrup_ml", "abv", "oil_ppm", "glass_abv", "glass_ppm"),
    [(1000, 2.59, 1820, 0.32, 228), (3800, 0.70, 490, 0.09, 61)],
)
def test_the_two_doses_of_a_1_to_15_essence_deliver_what_was_computed_elsewhere(
    syrup_ml: float, abv: float, oil_ppm: float, glass_abv: float, glass_ppm: float
) -> None:
    """A cross-check: 30 mL of essence of 95 % spirit, figures computed once by adding volumes."""
    base = add(some(SUGAR, 600_000), some(WATER, 400_000))
    dose = scaled(essence("lemon-oil", 0.853, 30, 95, 480), 30 / 480)
    syrup = add(scaled(base, syrup_ml * ML / base.volume_ul), dose)
    glass = add(syrup, some(WATER, 7 * syrup.volume_ul))
    assert syrup.abv == pytest.approx(abv, rel=0.005)
    assert 1e4 * oil_percent(syrup, "lemon-oil") == pytest.approx(oil_ppm, rel=0.005)
    assert glass.abv == pytest.approx(glass_abv, abs=0.01)
    assert 1e4 * oil_percent(glass, "lemon-oil") == pytest.approx(glass_ppm, abs=1.5)


@pytest.mark.parametrize(
    ("sugar_g_in_100", "glass_brix", "volumes"), [(50, 7.48, 7.995), (66.7, 10.64, 7.989)]
)
def test_a_pour_of_1_to_7_is_what_was_computed_elsewhere(
    sugar_g_in_100: float, glass_brix: float, volumes: float
) -> None:
    """A cross-check with syrups.csv: SPS-4 by another hand."""
    sugar, water = 1000 * sugar_g_in_100, 100_000 - 1000 * sugar_g_in_100
    syrup = add(some(SUGAR, sugar), some(WATER, water / 0.9982))
    glass = add(syrup, some(WATER, 7 * syrup.volume_ul))
    assert glass.sugar_percent_mass == pytest.approx(glass_brix, abs=0.01)
    assert glass.volume_ul / syrup.volume_ul == pytest.approx(volumes, abs=0.001)


def test_a_measured_volume_wins_over_the_computed_one() -> None:
    computed = essence("lemon-oil", 0.853, 30, 95, 480)
    assert measured(computed, 475_000, is_loss=False).abv == pytest.approx(95 * 450 / 475, abs=0.01)
