"""The density of sucrose and water by ICUMSA SPS-4, as it is printed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.liquids import sps4, sucrose

TEMPS_C = st.floats(0, 80)


@pytest.mark.parametrize(
    ("temp_c", "published"),
    [(10, 999.70), (15, 999.10), (20, 998.20), (25, 997.04), (30, 995.65)],
)
def test_its_water_is_that_of_the_official_table(temp_c: float, published: float) -> None:
    """OIML R 22 Table I, water column; the two tables share no formula."""
    assert sucrose.density(0, temp_c) == pytest.approx(published, abs=0.01)


@given(w=st.floats(0, 0.75), t=TEMPS_C)
def test_the_density_has_all_terms_of_the_printed_equation(w: float, t: float) -> None:
    above = (t - 20) / 100
    mixed = sum(
        term * w ** (i + 1) * above**k
        for k, row in enumerate(sps4.TERMS)
        for i, term in enumerate(row)
    )
    water = sum(term * t**k for k, term in enumerate(sps4.WATER)) / (1 + sps4.WATER_DIVISOR * t)
    assert sps4.density(w, t) == pytest.approx(water + mixed, abs=1e-9)
    assert [len(row) for row in sps4.TERMS] == [6, 5, 4, 3, 2]


@pytest.mark.parametrize(
    ("w", "t", "kept"),
    [
        (0.25, 0.0, 1108.3478),
        (0.75, 0.0, 1389.5346),
        (0.5, 40.0, 1219.9349),
        (0.25, 80.0, 1073.5015),
        (0.75, 80.0, 1343.8173),
    ],
)
def test_away_from_20_degrees_it_gives_what_it_did(w: float, t: float, kept: float) -> None:
    """Our own sum of the printed equation, kept as it is."""
    assert sps4.density(w, t) == pytest.approx(kept, abs=1e-4)
