"""What instruments read in a lot beside what is reckoned of it."""

import pytest

from ledger.domain.entries import Measurement
from ledger.domain.entries.choices import Measured
from ledger.domain.lots.readings import Reckoned
from ledger.domain.masters.doubts import doubts
from ledger.science.contents.composition import Contents, add
from ledger.science.contents.readings import beside
from ledger.science.liquids.alcoholmeter import true_from_indicated
from tests.domain.builders import make
from tests.science.liquids.liquid_rows import ACID, ML, SUGAR, WATER, oil, some, spirit, total


def reading(what: Measured, value: float, temp_c: float | None = 20.0) -> Measurement:
    return make(
        Measurement,
        what=what,
        reading_micro=round(value * 1e6),
        temp_mdegc=None if temp_c is None else round(temp_c * 1000),
    )


USUALLY = doubts(None)
SPIRIT = add(Contents(100.0, ethanol_mg=78.924), Contents(0.0))
SYRUP = add(Contents(0.0, sucrose_mg=600_000.0), Contents(0.0, water_mg=400_000.0))


def test_a_syrup_of_three_to_two_by_weight_reads_sixty_brix_and_its_density() -> None:
    """ICUMSA SPS-4: 60 °Bx at 20 °C has 1286.61 kg/m³."""
    sugar = beside(reading(Measured.BRIX, 60.0), SYRUP, USUALLY)
    density = beside(reading(Measured.DENSITY, 1.2866), SYRUP, USUALLY)
    assert sugar is not None
    assert (round(sugar.reckoned, 3), sugar.is_apart) == (60.0, False)
    assert density is not None
    assert (round(density.reckoned, 5), density.is_apart) == (1.28661, False)


def test_a_reading_far_from_the_syrup_is_apart() -> None:
    for what, value in ((Measured.BRIX, 50.0), (Measured.DENSITY, 1.2296)):
        found = beside(reading(what, value), SYRUP, USUALLY)
        assert found is not None
        assert found.is_apart


def test_a_strength_of_unknown_warmth_may_be_off_by_more() -> None:
    known = beside(reading(Measured.ABV, 96.0), SPIRIT, USUALLY)
    unknown = beside(reading(Measured.ABV, 96.0, None), SPIRIT, USUALLY)
    assert known is not None
    assert unknown is not None
    assert (known.measured_doubt, unknown.measured_doubt) == (1.0, 3.0)
    assert round(known.reckoned) == 100


def test_a_finer_instrument_of_the_house_tells_apart_what_a_usual_one_cannot() -> None:
    finer = doubts("label-strength=0.1; alcoholmeter=0.1; refractometer=0.1; hydrometer=0.02")
    for what, value, contents, own in (
        (Measured.ABV, 97.2, SPIRIT, 0.1),
        (Measured.BRIX, 61.0, SYRUP, 0.1),
        (Measured.DENSITY, 1.2866, SYRUP, 0.00025732),
    ):
        usual, fine = (beside(reading(what, value), contents, off) for off in (USUALLY, finer))
        assert usual is not None
        assert fine is not None
        assert fine.measured_doubt == pytest.approx(own, rel=1e-3)
        assert fine.doubt < usual.doubt


@pytest.mark.parametrize(
    "contents",
    [
        Contents(),
        Contents(100.0, water_mg=90.0, unknown_ul={"X-1": 10.0}),
        Contents(100.0),
        Contents(0.0, sucrose_mg=90.0),
    ],
    ids=["nothing there", "something unknown", "nothing in it", "nothing liquid"],
)
def test_nothing_is_compared_where_something_is_not_known(contents: Contents) -> None:
    for what in (Measured.BRIX, Measured.DENSITY, Measured.ABV):
        assert beside(reading(what, 60.0), contents, USUALLY) is None


def test_the_least_drop_is_compared() -> None:
    assert beside(reading(Measured.DENSITY, 1.0), Contents(0.5, water_mg=0.5), USUALLY) is not None


def test_a_reading_of_acidity_has_nothing_beside_it() -> None:
    assert beside(reading(Measured.PH, 3.2), SYRUP, USUALLY) is None


MIXED = total(
    some(SUGAR, 600_000),
    some(WATER, 400_000 / 0.9982),
    some(spirit(95), 100 * ML),
    some(ACID, 10_000),
    some(oil(), 10 * ML),
)
"""Sugar, spirit, an acid of which no density is known, and oil."""


def read(what: Measured, value: float, temp_c: float | None = 20.0) -> Reckoned:
    found = beside(reading(what, value, temp_c), MIXED, USUALLY)
    assert found is not None
    return found


def test_sugar_reads_from_what_spirit_hides_to_what_it_and_all_that_is_dissolved_add() -> None:
    """By hand: half a °Bx for a per cent of ethanol by mass; the oil counts for nothing."""
    sugar, acid, ethanol = (
        100 * mass / MIXED.mass_mg for mass in (600_000, 10_000, MIXED.ethanol_mg)
    )
    found = read(Measured.BRIX, 60.0)
    assert (found.measured, found.measured_doubt) == (60.0, 0.5)
    assert found.reckoned == pytest.approx(sugar)
    assert found.low == pytest.approx(sugar - ethanol / 2)
    assert found.high == pytest.approx(sugar + acid + ethanol / 2)
    assert found.reckoned_doubt == pytest.approx(0.03 * sugar)
    weak = beside(reading(Measured.BRIX, 1.0), SPIRIT, USUALLY)
    assert weak is not None
    assert weak.low == 0.0


@pytest.mark.parametrize(("temp_c", "doubt"), [(30.0, (0.5**2 + 0.8**2) ** 0.5), (None, 1.0)])
def test_warmth_moves_a_reading_of_sugar_by_its_degrees(temp_c: float | None, doubt: float) -> None:
    assert read(Measured.BRIX, 60.0, temp_c).measured_doubt == pytest.approx(doubt)


@pytest.mark.parametrize("temp_c", [30.0, 10.0, None])
def test_a_density_lies_between_what_fills_nothing_and_what_fills_its_room(
    temp_c: float | None,
) -> None:
    """By hand: 10 g at 1.5 g/mL; 0.2 % of the reading, 0.9 g/L a degree, 2 % beyond water."""
    found = read(Measured.DENSITY, 1.2, temp_c)
    full = MIXED.mass_mg / MIXED.volume_ul
    assert (found.high, found.reckoned) == pytest.approx((full, full))
    assert found.low == pytest.approx(MIXED.mass_mg / (MIXED.volume_ul + 10_000 / 1.5))
    assert found.measured_doubt == pytest.approx((0.0024**2 + 0.009**2) ** 0.5)
    assert found.reckoned_doubt == pytest.approx((0.0024**2 + (0.02 * (full - 1)) ** 2) ** 0.5)
    assert read(Measured.DENSITY, 1.2).measured_doubt == pytest.approx(0.0024)


def test_a_strength_is_corrected_for_its_warmth_and_may_float_as_one_of_none_in_syrup() -> None:
    found = read(Measured.ABV, 12.0, 30.0)
    assert (found.measured, found.measured_doubt) == (true_from_indicated(12.0, 30.0), 1.0)
    assert (found.low, found.high, found.reckoned) == (0.0, MIXED.abv, MIXED.abv)
    assert found.reckoned_doubt == pytest.approx((0.3**2 + (0.02 * MIXED.abv) ** 2) ** 0.5)
    hot = read(Measured.ABV, 12.0, 99.0)
    assert (hot.measured, hot.measured_doubt) == (12.0, 3.0)
