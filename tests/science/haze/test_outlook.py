"""Spirit that carries an oil, stands on the edge, or cannot; and what that does to the haze."""

import pytest

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import CLEAR_NTU
from ledger.science.haze.outlook import (
    Diluted,
    clear_by,
    compared,
    diluted_turbidity,
    held,
    neat_turbidity,
)
from ledger.science.haze.strength import Share, oil_of
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
