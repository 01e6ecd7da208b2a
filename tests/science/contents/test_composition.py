"""Laws of mixing liquids and taking shares of them, and volumes of handbooks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.science.contents.composition import (
    Contents,
    Part,
    PartKey,
    add,
    drawn,
    measured,
    reckoned_volume_ul,
    scaled,
)
from tests.science.liquids.liquid_rows import (
    ACID,
    ML,
    SUGAR,
    WATER,
    masses,
    oil,
    some,
    spirit,
    total,
)

LOTS = (spirit(96.2), spirit(40.0), oil(), oil("mint-oil", 0.904), SUGAR, WATER, ACID)
liquids = st.builds(some, st.sampled_from(LOTS), st.floats(10, 1e7))
several = st.lists(liquids, min_size=1, max_size=6)


def alike(one: Contents, other: Contents) -> bool:
    close = pytest.approx(masses(other), rel=1e-9, abs=1e-6)
    return masses(one) == close and one.volume_ul == pytest.approx(other.volume_ul, rel=1e-6)


@given(parts=several, data=st.data())
def test_the_order_of_additions_changes_nothing(parts: list[Contents], data: st.DataObject) -> None:
    assert alike(total(*parts), total(*data.draw(st.permutations(parts))))


@given(one=liquids, two=liquids, three=liquids)
def test_what_is_blended_first_changes_nothing(
    one: Contents, two: Contents, three: Contents
) -> None:
    assert alike(add(add(one, two), three), add(one, add(two, three)))


@given(parts=several)
def test_masses_add(parts: list[Contents]) -> None:
    assert total(*parts).mass_mg == pytest.approx(sum(part.mass_mg for part in parts), rel=1e-9)


@given(parts=several, factor=st.floats(0.001, 1000))
def test_a_batch_made_larger_has_every_mass_larger(parts: list[Contents], factor: float) -> None:
    assert alike(total(*(scaled(part, factor) for part in parts)), scaled(total(*parts), factor))


@given(parts=several, share=st.floats(0.01, 0.99))
def test_a_share_and_the_rest_make_the_whole(parts: list[Contents], share: float) -> None:
    whole = total(*parts)
    assert alike(add(scaled(whole, share), scaled(whole, 1 - share)), whole)


@given(parts=several, share=st.floats(0.5, 1))
def test_a_loss_takes_its_share_of_everything(parts: list[Contents], share: float) -> None:
    whole = total(some(WATER, 1000), *parts)
    left = measured(whole, share * whole.volume_ul, is_loss=True)
    assert left.abv == pytest.approx(whole.abv, rel=1e-9, abs=1e-9)
    assert masses(left) == pytest.approx(masses(scaled(whole, share)), rel=1e-9, abs=1e-6)


def test_a_measured_volume_creates_no_mass() -> None:
    whole = some(spirit(), 1000)
    for is_loss in (True, False):
        assert masses(measured(whole, 1010, is_loss=is_loss)) == masses(whole)
    assert masses(measured(whole, 990, is_loss=False)) == masses(whole)


def test_what_is_added_to_a_measured_volume_adds_what_it_makes_it_grow_by() -> None:
    made_up = measured(some(WATER, 1000 * ML), 990 * ML, is_loss=False)
    grown = add(made_up, some(spirit(96), 100 * ML))
    alone = total(some(WATER, 1000 * ML), some(spirit(96), 100 * ML))
    assert grown.volume_ul - made_up.volume_ul == pytest.approx(alone.volume_ul - 1000 * ML)


def test_no_more_is_drawn_than_is_there() -> None:
    whole = some(WATER, 1000)
    assert drawn(whole, 2000).volume_ul == pytest.approx(1000)
    assert drawn(Contents(), 10) == Contents()


def test_spirit_and_water_shrink_as_the_table_says() -> None:
    """100 + 100 L give 192.93 L at 20 °C (OIML R 22); trade books say 192.75 L (at 15 °C)."""
    mixed = total(some(spirit(100), 100 * ML), some(WATER, 100 * ML))
    assert mixed.volume_ul / ML == pytest.approx(192.93, abs=0.01)


def test_a_simple_syrup_has_the_density_of_its_table() -> None:
    """ICUMSA SPS-4 (1998): 50 °Bx at 20 °C, 1229.65 kg/m³."""
    syrup = total(some(WATER, 1000 * ML / 0.998201), some(SUGAR, 1_000_000))
    assert syrup.mass_mg / syrup.volume_ul * 1000 == pytest.approx(1229.65, abs=0.1)
    assert syrup.sugar_percent_mass == pytest.approx(50, abs=0.01)


def test_dry_sugar_fills_what_it_fills_in_a_strong_syrup() -> None:
    assert 0.55 < reckoned_volume_ul(Contents(sucrose_mg=1000.0)) / 1000 < 0.68


def test_liquid_of_unknown_mass_keeps_its_volume() -> None:
    whole = add(some(WATER, 1000), Contents(50.0, unknown_ul={"X-1": 50.0}))
    assert whole.volume_ul == pytest.approx(1050)
    assert whole.unknown_ul == {"X-1": 50.0}


def test_what_is_put_into_an_empty_vessel_fills_what_it_was_measured_to_fill() -> None:
    """Else a bottle would not be as strong as the liquid it was filled with."""
    measured_so = measured(some(spirit(), 1000 * ML), 1010 * ML, is_loss=False)
    filled = add(Contents(), drawn(measured_so, 505 * ML))
    assert filled.volume_ul == pytest.approx(505 * ML)
    assert filled.abv == pytest.approx(measured_so.abv)


def test_what_is_told_of_a_liquid_by_hand() -> None:
    """78.924 mg of ethanol fill 100 µL (789.24 kg/m³, OIML R 22); 50 µL of water weigh 49.91 mg."""
    parts = {
        PartKey("oil", "lemon-oil"): Part(100.0, 120.0),
        PartKey("rest", "acid"): Part(21.076, 9.0, 4.0),
    }
    found = Contents(1000.0, 78.924, 500.0, 300.0, parts, {"X-1": 50.0})
    assert found.mass_mg == pytest.approx(1000)
    assert found.abv == pytest.approx(10)
    assert found.sugar_g_per_l == pytest.approx(300)
    assert found.sugar_percent_mass == pytest.approx(30)
    assert found.base_syrup_percent_mass == pytest.approx(30_000 / (821.076 + 49.91), rel=1e-6)
    assert found.oils() == {"lemon-oil": Part(100.0, 120.0)}
    assert parts[PartKey("rest", "acid")].bought_mg == pytest.approx(25.076)
    nothing = Contents()
    told = (nothing.abv, nothing.sugar_g_per_l, nothing.sugar_percent_mass)
    assert (*told, nothing.base_syrup_percent_mass, nothing.volume_ul) == (0, 0, 0, 0, 0)


def test_all_parts_of_a_liquid_are_added_and_shared() -> None:
    key, notes = PartKey("rest", "acid"), (frozenset({"One."}), frozenset({"Two."}))
    one = Contents(10.0, 1.0, 2.0, 3.0, {key: Part(4.0, 5.0, 6.0)}, {"X-1": 7.0}, notes[0])
    other = Contents(20.0, 2.0, 3.0, 4.0, {key: Part(5.0, 6.0, 7.0)}, {"X-1": 8.0}, notes[1])
    both = add(one, other)
    assert (both.ethanol_mg, both.water_mg, both.sucrose_mg) == (3.0, 5.0, 7.0)
    assert both.parts == {key: Part(9.0, 11.0, 13.0)}
    assert both.unknown_ul == {"X-1": 15.0}
    assert both.notes == {"One.", "Two."}
    shares = {key: Part(2.0, 2.5, 3.0)}
    assert drawn(one, 5) == Contents(5.0, 0.5, 1.0, 1.5, shares, {"X-1": 3.5}, notes[0])
    assert drawn(replace(one, volume_ul=0.0), 5) == Contents(notes=notes[0])


def test_sugar_fills_what_it_adds_to_its_water_and_beyond_three_quarters_what_it_adds_there() -> (
    None
):
    """ICUMSA SPS-4 at 20 °C: 1229.65 kg/m³ at 50 % mass, water 998.20."""
    half = reckoned_volume_ul(Contents(water_mg=1000.0, sucrose_mg=1000.0))
    assert half == pytest.approx(2e6 / 1229.65, rel=2e-6)
    strong = reckoned_volume_ul(Contents(water_mg=1000 / 3, sucrose_mg=1000.0))
    water = reckoned_volume_ul(Contents(water_mg=1000 / 3))
    assert reckoned_volume_ul(Contents(sucrose_mg=1000.0)) == pytest.approx(
        strong - water, rel=1e-9
    )
    assert reckoned_volume_ul(Contents()) == 0


def test_the_least_drop_fills_its_share_of_what_a_litre_of_it_fills() -> None:
    drop = Contents(ethanol_mg=0.2, water_mg=0.3, sucrose_mg=0.4)
    litre = Contents(ethanol_mg=200_000, water_mg=300_000, sucrose_mg=400_000)
    assert reckoned_volume_ul(drop) == pytest.approx(reckoned_volume_ul(litre) / 1e6)
    assert reckoned_volume_ul(Contents()) == 0
