"""What a glass delivers, and on which side of a limit it is."""

import pytest

from ledger.domain.entries import Limit, Material
from ledger.domain.entries.masters import Constituent
from ledger.domain.entries.words import Bound, KnownBy, LimitBasis, LimitUnit, MaterialKind
from ledger.science.serving import (
    Concern,
    compared,
    concerns,
    daily,
    dosed,
    is_passed,
    poured,
    strength_markers,
)
from tests.science.liquids import ML, SUGAR, WATER, oil, some, spirit, total

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


def test_spirit_of_unknown_strength_weighs_as_little_as_it_can_in_a_share_of_the_lot() -> None:
    """35.4 g of oil, 34.69 g of it the substance, in it and 450 mL of at least 0.7892 g/mL."""
    unknown = total(some(oil("wintergreen-oil", 1.18), 30 * ML), some(spirit(None), 450 * ML))
    glass = poured(dosed(unknown, 30 * ML, 1000 * ML), 240 * ML, 7)
    share = concerns(glass, unknown, WINTERGREEN)[0].mg_per_kg_lot
    assert share == pytest.approx(1e6 * 34.692 / (35.4 + 450 * 0.78924), rel=1e-3)


def test_a_glass_holds_the_syrup_in_proportion_also_when_less_is_there() -> None:
    """Sugar of a 30 mL pour of 3:2 syrup by weight, about 23 g (60 °Bx is 772 g/L, SPS-4)."""
    syrup = total(some(SUGAR, 6000), some(WATER, 4000 / 0.9982))
    glass = poured(syrup, 240 * ML, 7)
    assert (glass.syrup_ul, glass.soda_ul) == (30 * ML, 210 * ML)
    assert glass.syrup.sucrose_mg / 1000 == pytest.approx(0.6 * 1.28661 * 30, abs=0.05)


def test_a_daily_ceiling_is_told_by_body_weight() -> None:
    """ADI 0 to 0.5 mg a kg (JECFA 1967, from memory): 30 mg at 60 kg, 10 mg at 20 kg."""
    told = daily(
        Concern("methyl salicylate", 17.0, 70, 1000), [ADI], [("adult", 60), ("child", 20)]
    )
    assert [(item.who, item.ceiling_mg, item.is_passed) for item in told] == [
        ("adult", 30, False),
        ("child", 10, True),
    ]


@pytest.mark.parametrize(
    ("bound", "below", "at", "above"),
    [
        ("at-most", False, False, True),
        ("less-than", False, True, True),
        ("from", False, True, True),
        ("above", False, False, True),
    ],
)
def test_each_bound_has_its_own_edge(bound: str, below: bool, at: bool, above: bool) -> None:
    there = limit(0.5, bound)
    assert [is_passed(figure, there) for figure in (0.499, 0.5, 0.501)] == [below, at, above]


def test_a_limit_is_compared_on_its_own_basis() -> None:
    concern = Concern("methyl salicylate", 17.0, 70.0, 87_000.0)
    found = compared(
        concern,
        [
            limit(100),
            limit(5, "above", "% mass", "as-sold"),
            limit(60, unit="mg/L"),
            limit(1, unit="g/100mL"),
            limit(1, substance="safrole"),
            ADI,
        ],
    )
    assert [(item.figure, item.is_passed) for item in found] == [
        (70.0, False),
        (8.7, True),
        (70.0, True),
    ]


def test_markers_of_alcohol_look_at_the_bottle_or_the_glass() -> None:
    bottle = limit(1.2, "above", "% vol", "as-sold", "alcohol")
    glass = limit(0.5, "from", "% vol", "as-served", "alcohol")
    found = strength_markers(2.6, 0.33, [bottle, glass, limit(1)])
    assert [(item.figure, item.is_passed) for item in found] == [(2.6, True), (0.33, False)]
