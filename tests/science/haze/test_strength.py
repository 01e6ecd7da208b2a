"""The least strength at which an oil is clear: what moves it, and what stays unsaid."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.contents.louche import Solubility
from ledger.science.haze.strength import (
    Band,
    Calibration,
    Oil,
    Share,
    doubt,
    least_strength,
    oil_of,
)
from ledger.service.account.shipped import solubilities

KNOWN = solubilities()
CALIBRATION = Calibration(0.64, 2.5, 1.8)


def oil(**shares: float) -> Oil:
    return oil_of(
        (Share(KNOWN[name.replace("_", "-")], low, low) for name, low in shares.items()), KNOWN
    )


def band(of: Oil, share: float = 1 / 16) -> Band:
    found = least_strength(of, share, CALIBRATION)
    assert found
    return found


def test_what_water_dissolves_better_asks_less_strength() -> None:
    assert band(oil(linalool=1)).likely < band(oil(limonene=1)).likely
    mixed = band(oil(linalool=0.5, limonene=0.5)).likely
    assert band(oil(linalool=1)).likely < mixed < band(oil(limonene=1)).likely


def test_a_substance_by_hand() -> None:
    """Log S = log S in water + cosolvency x share of ethanol, up to the oil's own density."""
    one = Solubility("x", 10.0, 10.0, "", 4.0, 0.9, 1.47)
    alone = oil_of([Share(one, 1.0, 1.0)], KNOWN)
    found = least_strength(alone, 1.0, Calibration(0.5, 3.0, 2.0))
    # From 1 to log 900 000 = 5.954, by 5 powers of ten; the step alone is doubted, by 5 points.
    assert found == pytest.approx((99.08 - 10, 99.08, 100.0), abs=0.01)


def test_an_oil_of_which_less_than_half_is_known_is_not_foretold() -> None:
    assert least_strength(oil(limonene=0.49), 1 / 16, CALIBRATION) is None
    assert least_strength(oil(limonene=0.51), 1 / 16, CALIBRATION)
    assert least_strength(oil(limonene=1), 0.0, CALIBRATION) is None


def test_the_less_is_known_of_an_oil_the_wider_is_its_band() -> None:
    assert doubt(oil(limonene=0.6), 0.1, CALIBRATION) > doubt(oil(limonene=0.9), 0.1, CALIBRATION)
    certain = Solubility("x", 10.8, 10.8, "", 4.57, 0.841, 1.473)
    assert doubt(oil_of([Share(certain, 1, 1)], KNOWN), 0.1, CALIBRATION) == pytest.approx(5)
    assert doubt(oil(limonene=1), 0.1, CALIBRATION) > 5


@given(st.floats(0.5, 1), st.floats(0.01, 0.9), st.floats(0.01, 0.9))
def test_thinner_never_asks_more_strength(share: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    of = oil(limonene=share)
    assert band(of, less).likely <= band(of, more).likely
    assert band(of, less).low <= band(of, less).likely <= band(of, less).high
