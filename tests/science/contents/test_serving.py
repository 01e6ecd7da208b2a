"""What a glass delivers, and on which side of a limit it is."""

import pytest

from ledger.domain.entries import Limit, Material
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit, MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.against import compared, daily, markers
from ledger.science.contents.serving import Concern, concerns, dosed, poured
from ledger.service.account.shipped import shipped
from tests.science.liquids.liquid_rows import ML, SUGAR, WATER, masses, oil, some, spirit, total

WINTERGREEN = {
    "wintergreen-oil": Material(
        "wintergreen-oil",
        "Oil of wintergreen",
        MaterialKind.OIL,
        constituents=(Constituent("methyl salicylate", 980_000),),
    )
}


def limit(
    value: float,
    bound: str = "at-most",
    unit: str = "mg/kg",
    basis: str = "as-served",
    substance: str = "methyl salicylate",
) -> Limit:
    return Limit(
        "x", substance, Bound(bound), round(value * 1e6), LimitUnit(unit), LimitBasis(basis),
        "EU", "a source", KnownBy.READ,
    )  # fmt: skip


def concern(mg_per_glass: float = 17.0) -> Concern:
    return Concern("methyl salicylate", mg_per_glass, 70.0, 87_000.0, 71.0, 72_000.0)


ADI = limit(0.5, unit="mg/kg body weight", basis="a-day")
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


def test_a_glass_holds_the_syrup_in_proportion_also_when_less_is_there() -> None:
    """Sugar of a 30 mL pour of 3:2 syrup by weight, about 23 g (60 °Bx is 772 g/L, SPS-4)."""
    syrup = total(some(SUGAR, 6000), some(WATER, 4000 / 0.9982))
    glass = poured(syrup, 240 * ML, 7)
    assert (glass.syrup_ul, glass.soda_ul) == (30 * ML, 210 * ML)
    assert glass.syrup.sucrose_mg / 1000 == pytest.approx(0.6 * 1.28661 * 30, abs=0.05)


def test_a_daily_ceiling_is_told_by_body_weight() -> None:
    """ADI 0 to 0.5 mg a kg (JECFA 1967, from memory): 30 mg at 60 kg, 10 mg at 20 kg."""
    told = daily(concern(15.0), [ADI], [("adult", 60), ("child", 20)])
    assert [(item.who, item.ceiling_mg, item.percent, item.is_passed) for item in told] == [
        ("adult", 30, 50, False),
        ("child", 10, 150, True),
    ]


def test_a_glass_that_holds_just_a_day_s_ceiling_does_not_pass_it() -> None:
    assert [item.is_passed for item in daily(concern(30.0), [ADI], [("adult", 60)])] == [False]


def test_where_nothing_at_all_is_allowed_a_day_any_glass_of_it_passes() -> None:
    none = limit(0, unit="mg/kg body weight", basis="a-day")
    told = daily(concern(0.1), [none], [("adult", 60)])
    assert [(item.ceiling_mg, item.percent, item.is_passed) for item in told] == [(0, None, True)]
    assert daily(concern(0.0), [none], [("adult", 60)]) == ()


def test_a_limit_is_compared_on_its_own_basis() -> None:
    found = compared(
        concern(),
        [
            limit(100),
            limit(5, "above", "% mass", "as-sold"),
            limit(60, unit="mg/L"),
            limit(60, unit="mg/L", basis="as-sold"),
            limit(1, unit="g/100mL"),
            limit(1, unit="% vol"),
            limit(1, substance="safrole"),
            ADI,
        ],
    )
    assert [(item.figure, item.is_passed) for item in found] == [
        (70.0, False),
        (8.7, True),
        (71.0, True),
        (72_000.0, True),
        (0.0071, False),
    ]


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


def test_markers_of_alcohol_look_at_the_bottle_or_the_glass() -> None:
    bottle = limit(1.2, "above", "% vol", "as-sold", "alcohol")
    glass = limit(0.5, "from", "% vol", "as-served", "alcohol")
    syrup = total(some(spirit(96), 28 * ML), some(WATER, 972 * ML))
    found = markers(syrup, poured(syrup, 240 * ML, 7), [bottle, glass, limit(1)])
    assert [(round(item.figure, 2), item.is_passed) for item in found] == [
        (2.69, True),
        (0.34, False),
    ]


@pytest.mark.parametrize(("percent", "grams", "is_reached"), [(60, 77.2, True), (45, 54.1, False)])
def test_markers_of_sugar_look_at_what_a_syrup_holds(
    percent: float, grams: float, is_reached: bool
) -> None:
    """60 and 45 degrees Brix weigh 1.28661 and 1.20285 kg/L at 20 C (ICUMSA SPS-4)."""
    yardstick = limit(60, "from", "g/100mL", "as-sold", "sugar")
    syrup = total(some(SUGAR, 1000 * percent), some(WATER, 1000 * (100 - percent) / 0.9982))
    found = markers(syrup, poured(syrup, 240 * ML, 7), [yardstick])
    assert [(round(item.figure, 1), item.is_passed) for item in found] == [(grams, is_reached)]


def test_sugar_is_not_told_where_only_what_an_essence_brings_is_known() -> None:
    yardstick = limit(60, "from", "g/100mL", "as-sold", "sugar")
    syrup = dosed(ESSENCE, 30 * ML, 1000 * ML)
    assert markers(syrup, poured(syrup, 240 * ML, 7), [yardstick]) == ()


def test_every_limit_that_comes_with_pottle_is_compared_with_a_liquid_that_holds_it() -> None:
    held = {item.substance for item in shipped()} - {"alcohol", "sugar"}
    told = tuple(Constituent(name, 10_000) for name in sorted(held))
    materials = {"oil": Material("oil", "Oil", MaterialKind.OIL, constituents=told)}
    syrup = total(
        some(SUGAR, 60_000), some(WATER, 40 * ML), some(oil("oil", 0.9), ML), some(spirit(96), ML)
    )
    glass = poured(syrup, 240 * ML, 7)
    found = {item.limit.code for item in markers(syrup, glass, shipped())}
    for concern in concerns(glass, syrup, materials):
        found |= {item.limit.code for item in compared(concern, shipped())}
        found |= {item.limit.code for item in daily(concern, shipped(), [("adult", 60)])}
    assert found == {item.code for item in shipped()}


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
