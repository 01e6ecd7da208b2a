"""A figure beside a limit: on its own basis and in its unit, with a verdict that agrees with it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Limit, Material
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit, MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.domain.masters.limits import is_passed
from ledger.science.contents.against import Compared, Daily, compared, daily, markers
from ledger.science.contents.serving import Concern, concerns, dosed, poured
from ledger.science.doubt.conformity import Verdict
from ledger.service.account.shipped import shipped
from tests.science.liquids.liquid_rows import ML, SUGAR, WATER, oil, some, spirit, total


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


@given(st.sampled_from(Bound), st.sampled_from([0.4, 0.5, 0.6]))
def test_without_doubt_above_is_what_is_passed(bound: Bound, figure: float) -> None:
    """Also just at the limit, by whether the bound takes it in."""
    held = limit(0.5, bound, "% vol", substance="alcohol")
    item = Compared(held, figure, is_passed(figure, held))
    assert (item.verdict is Verdict.ABOVE) == item.is_passed


@pytest.mark.parametrize(
    ("figure", "doubt", "verdict"),
    [(0.49, 0.02, Verdict.UNDECIDED), (0.47, 0.02, Verdict.BELOW), (0.53, 0.02, Verdict.ABOVE)],
)
def test_with_its_doubt_a_figure_may_be_too_close_to_tell(
    figure: float, doubt: float, verdict: Verdict
) -> None:
    assert (
        Compared(limit(0.5, "from", "% vol", substance="alcohol"), figure, False, doubt).verdict
        is verdict
    )


def test_a_daily_ceiling_is_told_by_what_a_glass_takes_of_it() -> None:
    """30 mg a day for 60 kg: 29 mg, give or take 2, are too close to tell."""
    taken = Daily(ADI, "adult", 60, 30.0, 96.7, 29.0, 2.0)
    assert (taken.verdict, taken.is_passed) == (Verdict.UNDECIDED, False)
    assert Daily(ADI, "child", 20, 10.0, 290.0, 29.0, 2.0).verdict is Verdict.ABOVE
    assert Daily(ADI, "adult", 60, 0.0, None, 29.0).verdict is Verdict.ABOVE


def test_a_glass_that_takes_just_a_ceiling_has_kept_it() -> None:
    taken = Daily(ADI, "adult", 60, 30.0, 100.0, 30.0)
    assert (taken.verdict, taken.is_passed) == (Verdict.BELOW, False)


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
    syrup = dosed(total(some(spirit(95), 450 * ML)), 30 * ML, 1000 * ML)
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
