"""Spirit that carries an oil, stands on the edge, or cannot; and what that does to the haze."""

import pytest

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import CLEAR_NTU, Range, against, index_of_syrup, turbidity
from ledger.science.haze.outlook import (
    Diluted,
    clear_by,
    compared,
    diluted_turbidity,
    held,
    neat_turbidity,
)
from ledger.science.haze.parted import drops_of, most_held, parted
from ledger.science.haze.strength import Share, least_strength, oil_of
from ledger.service.account.oils import calibration
from ledger.service.account.shipped import solubilities

KNOWN = solubilities()
ORANGE = oil_of([Share(KNOWN["limonene"], 0.95, 0.95)], KNOWN)
FIT = calibration()


@pytest.mark.parametrize(
    ("abv", "carried"), [(40, Carried.NO), (80, Carried.EDGE), (96, Carried.YES), (None, None)]
)
def test_vodka_cannot_80_stands_on_the_edge_and_96_is_safe(
    abv: float | None, carried: Carried | None
) -> None:
    assert clear_by(ORANGE, 1 / 16, abv, FIT)[1] is carried


def test_an_essence_is_clear_milky_or_either() -> None:
    yes, edge, no = (neat_turbidity(ORANGE, 53_000, carried, 1.36) for carried in (
        Carried.YES, Carried.EDGE, Carried.NO))  # fmt: skip
    assert yes == (0, CLEAR_NTU)
    assert edge is not None
    assert no is not None
    assert edge.low == 0 < no.low
    assert no.low > 30
    assert edge.high == no.high
    assert neat_turbidity(ORANGE, 53_000, None, 1.36) is None


def test_a_drink_is_clear_where_nothing_parts_and_shows_more_than_its_syrup() -> None:
    syrup, glass = Diluted(1500, 2.5, 60), Diluted(188, 0.3, 9)
    assert diluted_turbidity(ORANGE, Diluted(4, 0.3, 9), FIT) == (0, CLEAR_NTU)
    assert diluted_turbidity(ORANGE, glass, FIT).low > CLEAR_NTU
    assert compared(ORANGE, syrup, glass).low > 10
    assert 5 < held(ORANGE, glass, FIT).low < held(ORANGE, glass, FIT).high < 30


def test_spirit_just_at_an_end_of_the_band_is_safe_above_and_on_the_edge_below() -> None:
    band = least_strength(ORANGE, 1 / 16, FIT)
    assert band is not None
    assert clear_by(ORANGE, 1 / 16, band.high, FIT) == (band, Carried.YES)
    assert clear_by(ORANGE, 1 / 16, band.low, FIT) == (band, Carried.EDGE)
    assert clear_by(ORANGE, 1 / 16, band.low - 1e-9, FIT) == (band, Carried.NO)
    assert clear_by(ORANGE, 1 / 16, None, FIT) == (band, None)


def test_of_spirit_that_is_too_weak_a_tenth_of_the_oil_has_parted_at_the_least() -> None:
    shown = neat_turbidity(ORANGE, 100, Carried.NO, 1.36)
    assert shown == turbidity(Range(10, 100), drops_of(ORANGE), 1.36)
    edge = neat_turbidity(ORANGE, 100, Carried.EDGE, 1.36)
    assert edge == turbidity(Range(0, 100), drops_of(ORANGE), 1.36)


def test_a_diluted_liquid_shows_what_parts_in_it_at_the_least_as_much_as_a_clear_one() -> None:
    for liquid in (Diluted(188, 0.3, 9), Diluted(15, 0.3, 9), Diluted(8, 0.3, 60)):
        apart = parted(ORANGE, liquid.oil_mg_per_l, liquid.abv, FIT)
        shown = turbidity(apart, drops_of(ORANGE), index_of_syrup(liquid.brix))
        least = CLEAR_NTU if apart.low == 0 else 0.0
        found = diluted_turbidity(ORANGE, liquid, FIT)
        assert found == (shown.low, max(shown.high, least))
    heavy = Diluted(30, 0.0, 60)
    assert 0 < diluted_turbidity(ORANGE, heavy, FIT).high < CLEAR_NTU


def test_drops_are_compared_in_the_syrup_and_in_the_glass() -> None:
    syrup, glass = Diluted(1500, 2.5, 60), Diluted(188, 0.3, 9)
    found = against(drops_of(ORANGE), index_of_syrup(60), index_of_syrup(9))
    assert compared(ORANGE, syrup, glass) == found
    assert held(ORANGE, glass, FIT) == most_held(ORANGE, 0.3, FIT)
