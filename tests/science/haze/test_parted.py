"""What parts from a drink, against the law it follows."""

import pytest

from ledger.science.haze.parted import drops_of, most_held, parted
from ledger.science.haze.strength import Calibration, Oil, Share, oil_of
from ledger.service.account.shipped import solubilities

KNOWN = solubilities()
FIT = Calibration(0.64, 2.5, 1.8)


def oil(**shares: float) -> Oil:
    return oil_of((Share(KNOWN[name], low, low) for name, low in shares.items()), KNOWN)


def test_of_one_substance_all_above_what_water_holds_parts() -> None:
    """Limonene: 6 to 19.4 mg/L."""
    assert parted(oil(limonene=1), 200, 0, FIT) == pytest.approx((180.6, 194))
    assert parted(oil(limonene=1), 10, 0, FIT) == pytest.approx((0, 4))
    assert parted(oil(limonene=1), 5, 0, FIT) == (0, 0)
    assert most_held(oil(limonene=1), 0, FIT) == pytest.approx((6, 19.4))


def test_two_substances_part_as_raoult_says() -> None:
    """By hand: 100 mg/L each of solubilities 6 and 531 mg/L leave N apart.

    100/(N + 6) + 100/(N + 531) = 1 at N = 117.2.
    """
    both = oil(limonene=0.5, geraniol=0.5)
    apart = parted(both, 200, 0, FIT).high
    assert 100 / (apart + 6) + 100 / (apart + 531) == pytest.approx(1)


def test_a_little_ethanol_holds_more_and_an_unknown_rest_widens_the_answer() -> None:
    dry, wet = (most_held(oil(limonene=1), abv, FIT) for abv in (0, 3))
    assert wet.low > dry.low
    narrow, wide = (parted(oil(limonene=share), 100, 0, FIT) for share in (1.0, 0.6))
    assert wide.high - wide.low > narrow.high - narrow.low


def test_drops_are_what_the_oil_is() -> None:
    assert drops_of(oil(limonene=0.8)) == pytest.approx((0.841, 1.473))
