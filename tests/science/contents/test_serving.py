"""What a glass delivers: its strength, and what is in it of each substance of concern."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.serving import concerns, dosed, poured
from tests.science.liquids.liquid_rows import ML, SUGAR, WATER, masses, oil, some, spirit, total

WINTERGREEN = {
    "wintergreen-oil": Material(
        "wintergreen-oil",
        "Oil of wintergreen",
        MaterialKind.OIL,
        constituents=(Constituent("methyl salicylate", 980_000),),
    )
}
ESSENCE = total(some(oil("wintergreen-oil", 1.18), 30 * ML), some(spirit(95), 450 * ML))


@pytest.mark.parametrize(("base_ml", "mg"), [(1000, 64), (3800, 17)])
def test_a_pour_of_30_ml_brings_what_was_computed_elsewhere(base_ml: float, mg: float) -> None:
    """A cross-check with trade figures: 64 mg a 30 mL pour by the litre, 17 mg by 3.8 L."""
    glass = poured(dosed(ESSENCE, 30 * ML, base_ml * ML), 240 * ML, 7)
    found = concerns(glass, ESSENCE, WINTERGREEN)
    assert [item.substance for item in found] == ["methyl salicylate"]
    assert found[0].mg_per_glass == pytest.approx(mg, abs=1)


def test_the_essence_is_as_strong_in_methyl_salicylate_as_was_computed_elsewhere() -> None:
    """About 8.7 % by mass at 1:15 (a cross-check)."""
    glass = poured(dosed(ESSENCE, 30 * ML, 1000 * ML), 240 * ML, 7)
    assert concerns(glass, ESSENCE, WINTERGREEN)[0].mg_per_kg_lot == pytest.approx(87_000, abs=1500)


def test_of_what_only_the_syrup_brought_nothing_is_in_the_lot() -> None:
    glass = poured(dosed(ESSENCE, 30 * ML, 1000 * ML), 240 * ML, 7)
    (found,) = concerns(glass, some(WATER, 30 * ML), WINTERGREEN)
    assert found.mg_per_glass > 60
    assert (found.mg_per_kg_lot, found.mg_per_l_lot) == (0, 0)


def test_a_glass_holds_the_syrup_in_proportion_also_when_less_is_there() -> None:
    """Sugar of a 30 mL pour of 3:2 syrup by weight, about 23 g (60 °Bx is 772 g/L, SPS-4)."""
    syrup = total(some(SUGAR, 6000), some(WATER, 4000 / 0.9982))
    glass = poured(syrup, 240 * ML, 7)
    assert (glass.syrup_ul, glass.soda_ul) == (30 * ML, 210 * ML)
    assert glass.syrup.sucrose_mg / 1000 == pytest.approx(0.6 * 1.28661 * 30, abs=0.05)


def test_a_limit_by_the_litre_is_compared_with_what_a_litre_holds() -> None:
    """A litre of 60 °Bx syrup weighs 1.287 kg (SPS-4): so much more is in it than in a kilogram."""
    syrup = total(
        some(SUGAR, 600_000), some(WATER, 400_000 / 0.9982), some(oil("wintergreen-oil", 1.18), 85)
    )
    found = concerns(poured(syrup, 240 * ML, 7), syrup, WINTERGREEN)[0]
    held_mg = 0.98 * masses(syrup)["wintergreen-oil"]
    assert found.mg_per_l_lot == pytest.approx(held_mg / (syrup.volume_ul / 1e6))
    assert found.mg_per_l_lot / found.mg_per_kg_lot == pytest.approx(1.28661, abs=1e-4)
    assert found.mg_per_l_drink == pytest.approx(found.mg_per_glass / 0.240)
    assert found.mg_per_l_drink > 1.02 * found.mg_per_kg_drink


def test_what_is_not_known_of_a_lot_weighs_on_a_share_as_the_lightest_it_could_be() -> None:
    """An essence with spirit of unknown strength is not told to be all oil, nor too weak in it."""
    unknown = total(some(oil("wintergreen-oil", 1.18), 30 * ML), some(spirit(None), 450 * ML))
    glass = poured(dosed(unknown, 30 * ML, 1000 * ML), 240 * ML, 7)
    found = concerns(glass, unknown, WINTERGREEN)[0]
    assert found.mg_per_kg_lot == pytest.approx(1e6 * 0.98 * 35.4 / (35.4 + 450 * 0.78924))
    known = concerns(glass, ESSENCE, WINTERGREEN)[0]
    assert known.mg_per_kg_lot < found.mg_per_kg_lot < 1.04 * known.mg_per_kg_lot


def test_a_limit_as_served_is_compared_with_the_mass_of_the_whole_drink() -> None:
    """30 mL of 1,030 mL that weigh at least 30 × 0.826 g and a litre of water, in 210 mL of soda.

    By hand: of 30 mL of the syrup 29.13 mL are base as light as water, 29.08 g; 210 mL of soda
    water are 209.62 g; the rest is essence, whose 0.874 mL hold 0.069 g of methyl salicylate.
    """
    syrup = dosed(ESSENCE, 30 * ML, 1000 * ML)
    glass = poured(syrup, 240 * ML, 7)
    essence_g = ESSENCE.mass_mg / 1000 * (30 * ML / ESSENCE.volume_ul) * (30 / 1030)
    drink_g = 29.126 * 0.99820 + essence_g + 210 * 0.99820
    (found,) = concerns(glass, ESSENCE, WINTERGREEN)
    assert glass.mass_mg / 1000 == pytest.approx(drink_g, abs=0.05)
    assert found.mg_per_kg_drink == pytest.approx(found.mg_per_glass / (drink_g / 1000), rel=3e-4)


def test_a_glass_is_as_strong_as_the_ethanol_in_the_whole_of_it() -> None:
    """By hand: 30 mL at 48 % vol are 14.4 mL of pure ethanol, in 240 mL 6 %."""
    syrup = total(some(spirit(48), 480 * ML))
    assert poured(syrup, 240 * ML, 7).abv == pytest.approx(6.0)
    assert poured(syrup, 240 * ML, 0).abv == pytest.approx(48.0)
