"""Dilution: the published figures, the laws, and what is refused."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure, Quantity, parse_quantity
from ledger.errors import RefusedError
from ledger.science.liquids.alcohol import density, mass_percent_from_abv
from ledger.science.liquids.alcoholmeter import true_from_indicated
from ledger.science.liquids.dilution import Dilution, dilute, mixed, step_of
from tests.science.published import rows

PUBLISHED = [row for row in rows("alcohol_dilution.csv") if row["published_stock_mL"]]


def test_a_part_of_just_a_microlitre_can_be_measured_and_of_less_cannot() -> None:
    assert step_of(10.0, 1.0) == 1
    with pytest.raises(RefusedError):
        step_of(10.0, 0.99)


def ethanol_g(abv: float, volume_ul: float) -> float:
    strength = mass_percent_from_abv(abv)
    return strength / 100 * density(strength) * volume_ul / 1e6


@st.composite
def strengths(draw: st.DrawFn) -> tuple[float, float]:
    stock = draw(st.floats(5, 100))
    return stock, draw(st.floats(1, stock - 0.5))


FINALS = st.integers(10_000, 10**9)


def made(pair: tuple[float, float], final_ul: int) -> Dilution:
    return dilute(*pair, Quantity(final_ul, Measure.UL, ""))


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: f"to {row['target_abv']} %")
def test_the_spirit_is_that_of_the_pharmacopoeia_within_1_ml(row: dict[str, str]) -> None:
    """Source: column "source" of alcohol_dilution.csv (BP, Dilute Ethanols)."""
    final = parse_quantity(f"{row['final_mL_20C']} mL")
    found = dilute(float(row["stock_abv"]), float(row["target_abv"]), final)
    assert found.stock_ul / 1000 == pytest.approx(float(row["published_stock_mL"]), abs=1)


def test_eighty_per_cent_spirit_takes_831_ml_of_the_strong() -> None:
    """BP, Ethanol (80 per cent): from memory."""
    assert dilute(96.3, 80, parse_quantity("1 L")).stock_ul / 1000 == pytest.approx(831, abs=1)


def test_equal_volumes_of_ethanol_and_water_shrink_as_a_glossary_says() -> None:
    """glossary.wein-plus.eu, volume percent: 100 L and 100 L give 192.75 L.

    The figure comes without a temperature; it is that of 15 °C. At 20 °C the sums give 192.93 L.
    """
    ethanol, water = density(100, 15), density(0, 15)
    together = density(100 * ethanol / (ethanol + water), 15)
    assert 100 * (ethanol + water) / together == pytest.approx(192.75, abs=0.02)
    assert mixed(100, 100e6, 100e6)[1] / 1e6 == pytest.approx(192.93, abs=0.01)


def test_weak_spirit_grows_when_it_is_diluted_as_the_official_table_has_it() -> None:
    """USP29 alcoholometric table: gravities 0.9653 and 0.9866 of 30 and 10 % vol at 60 °F."""
    gravity = {
        float(row["conditions"].split()[0]): float(row["published"])
        for row in rows("alcohol_check_points.csv")
        if row["quantity"] == "SG in air 15.56/15.56"
    }
    stock = 1000 * 10 / 30
    water = 1000 * gravity[10] - stock * gravity[30]
    found = dilute(30, 10, parse_quantity("1 L"))
    assert stock + water - 1000 == pytest.approx(found.contraction_ul / 1000, abs=0.5)
    assert found.contraction_ul < -1000


@given(pair=strengths(), final_ul=FINALS)
def test_the_rounded_volumes_mix_back_to_what_was_asked(
    pair: tuple[float, float], final_ul: int
) -> None:
    found = made(pair, final_ul)
    assert found.check_abv == pytest.approx(pair[1], rel=6e-3)
    assert found.check_ul == pytest.approx(final_ul, rel=2e-4)
    assert found.final_ul == pytest.approx(final_ul, abs=found.step)


@given(pair=strengths(), final_ul=FINALS)
def test_ethanol_and_mass_are_conserved(pair: tuple[float, float], final_ul: int) -> None:
    found = made(pair, final_ul)
    before, after = ethanol_g(pair[0], found.stock_ul), ethanol_g(pair[1], final_ul)
    assert before == pytest.approx(after, abs=found.step / 1000, rel=2e-6)
    assert found.stock_mg + found.water_mg == pytest.approx(found.final_mg, abs=1.5 * found.step)


@given(pair=strengths(), final_ul=FINALS)
def test_the_volumes_add_up_as_shown(pair: tuple[float, float], final_ul: int) -> None:
    found = made(pair, final_ul)
    assert found.stock_ul + found.water_ul - found.contraction_ul == found.final_ul
    assert -0.002 < found.contraction_ul / final_ul < 0.04


@given(stock=st.floats(70, 100), target=st.floats(20, 69))
def test_strong_spirit_shrinks_when_it_is_diluted(stock: float, target: float) -> None:
    assert made((stock, target), 10**8).contraction_ul > 0


@given(pair=strengths(), more=st.floats(0.1, 10))
def test_a_weaker_wish_takes_less_spirit_and_more_water(
    pair: tuple[float, float], more: float
) -> None:
    assume(pair[1] - more > 1)
    strong, weak = made(pair, 10**8), made((pair[0], pair[1] - more), 10**8)
    assert weak.stock_ul < strong.stock_ul
    assert weak.water_mg > strong.water_mg


@given(pair=strengths(), temp_c=st.floats(0, 40))
def test_at_another_temperature_the_weights_are_the_same(
    pair: tuple[float, float], temp_c: float
) -> None:
    found = dilute(*pair, Quantity(10**8, Measure.UL, ""), temp_c)
    assert found.warmed is not None
    strong = mass_percent_from_abv(pair[0])
    weight_mg = found.warmed.stock_ul * density(strong, temp_c) / 1000
    assert weight_mg == pytest.approx(found.stock_mg, abs=1.5 * found.step)


@given(pair=strengths())
def test_at_20_degrees_the_volumes_are_the_same(pair: tuple[float, float]) -> None:
    found = dilute(*pair, Quantity(10**8, Measure.UL, ""), 20.0)
    assert found.warmed is not None
    assert (found.warmed.stock_ul, found.warmed.water_ul) == (found.stock_ul, found.water_ul)
    assert found.warmed.final_ul == found.final_ul


@given(pair=strengths(), temp_c=st.floats(0, 40))
def test_the_reading_to_expect_corrects_to_the_strength_made(
    pair: tuple[float, float], temp_c: float
) -> None:
    found = dilute(*pair, Quantity(10**8, Measure.UL, ""), temp_c)
    assert found.warmed is not None
    assume(found.warmed.shown_abv is not None)
    assert found.warmed.shown_abv is not None
    assert true_from_indicated(found.warmed.shown_abv, temp_c) == pytest.approx(pair[1], abs=1e-3)


@pytest.mark.parametrize(("wanted", "temp_c"), [(99, 40.0), (0.2, 4.0)], ids=["warm", "cold"])
def test_a_reading_off_the_scale_is_not_told(wanted: float, temp_c: float) -> None:
    found = dilute(99.9, wanted, parse_quantity("1 L"), temp_c)
    assert found.warmed is not None
    assert found.warmed.shown_abv is None


def test_an_amount_by_weight_is_what_it_weighs() -> None:
    assert dilute(96, 50, parse_quantity("500 g")).final_mg == 500_000


@pytest.mark.parametrize(
    ("stock", "target", "amount", "sentence"),
    [
        (
            80,
            96.3,
            "1 L",
            "Water makes spirit weaker, so 80 % vol cannot be diluted to 96.3 % vol. Give the "
            "spirit first and the strength you want second, or use a stronger spirit.",
        ),
        (
            80,
            80,
            "1 L",
            "The spirit is 80 % vol already, so there is nothing to dilute. Give a lower strength.",
        ),
        (
            96,
            0,
            "1 L",
            "Spirit cannot be diluted to 0 % vol; that would be water alone. "
            "Give the strength you want, above 0.",
        ),
        (
            96,
            0.001,
            "1 mL",
            "One of the two liquids would be less than 1 µL, which cannot be measured. "
            "Ask for a larger amount, or dilute in two steps.",
        ),
        (
            120,
            50,
            "1 L",
            "A strength is from 0 to 100 % vol, and 120 % vol is outside. "
            "Read the label or the instrument again.",
        ),
        (
            96,
            50,
            "12 each",
            "12 each is a number of things, and a dilution makes a volume or a mass. "
            "Say how much, such as 1 L or 500 g.",
        ),
    ],
    ids=["upwards", "same", "to water", "too little", "impossible", "things"],
)
def test_what_cannot_be_diluted_is_refused(
    stock: float, target: float, amount: str, sentence: str
) -> None:
    with pytest.raises(RefusedError) as caught:
        dilute(stock, target, parse_quantity(amount))
    assert str(caught.value) == sentence


def test_cold_water_that_would_be_ice_is_refused() -> None:
    with pytest.raises(RefusedError) as caught:
        dilute(96, 50, parse_quantity("1 L"), -5)
    assert str(caught.value) == (
        "Ethanol and water with 0 % mass of ethanol begin to freeze at about 0 °C, so at −5 °C "
        "part of it is ice. Let it warm until the ice is gone, stir, and read again."
    )
