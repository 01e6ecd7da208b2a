"""What instruments read in a lot beside what is reckoned of it."""

import pytest

from ledger.domain.entries import Measurement
from ledger.domain.entries.choices import Measured
from ledger.domain.masters.doubts import doubts
from ledger.science.contents.composition import Contents, add
from ledger.science.contents.readings import beside
from tests.domain.builders import make


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
    [Contents(), Contents(100.0, water_mg=90.0, unknown_ul={"X-1": 10.0})],
    ids=["nothing there", "something unknown"],
)
def test_nothing_is_compared_where_something_is_not_known(contents: Contents) -> None:
    assert beside(reading(Measured.BRIX, 60.0), contents, USUALLY) is None


def test_a_reading_of_acidity_has_nothing_beside_it() -> None:
    assert beside(reading(Measured.PH, 3.2), SYRUP, USUALLY) is None
