"""What parts from a drink, against the law it follows."""

import pytest

from ledger.science.contents.louche import Solubility
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


ONE = Solubility("one", 10.0, 20.0, "", 2.0, 0.8, 1.4)
OTHER = Solubility("other", 40.0, 90.0, "", 3.0, 1.0, 1.5)
"""Invented, with whole figures."""


def both(one: float, other: float) -> Oil:
    return oil_of((Share(ONE, one, one), Share(OTHER, other, other)), KNOWN)


def test_both_ends_of_what_parts_and_of_what_is_held_by_hand() -> None:
    """100 mg/L each of solubilities a and b leave N with N² + (a + b - 200) N = 100 (a + b) - ab.

    At the best a and b are 20 and 90, at the worst 10 and 40. Shares that come to more than one
    are those of a whole; of what is not known 5.04 mg/L dissolve at the worst, 3085 at the best.
    """
    apart = (45 + 11_225**0.5, 75 + 10_225**0.5)
    for halves in (both(0.5, 0.5), both(0.75, 0.75), both(1.0, 1.0)):
        assert parted(halves, 200, 0, FIT) == pytest.approx(apart)
        assert most_held(halves, 0, FIT) == pytest.approx((16, 1 / (0.025 + 0.5 / 90)))
    held = (1 / (0.06 + 0.4 / 5.04), 1 / (0.03 + 0.4 / 3085))
    assert most_held(both(0.6, 0.0), 0, FIT) == pytest.approx(held)
    assert parted(both(1.0, 0.0), 10, 0, FIT) == (0, 0)
    assert parted(both(1.0, 0.0), 10.05, 0, FIT) == pytest.approx((0, 0.05))


def test_ethanol_adds_a_power_of_ten_by_the_law_of_cosolvency() -> None:
    """At 5 % vol and log K 2 it is 0.05 (0.64 · 2 + 2.5) = 0.189, at log K 3 0.221."""
    more = 10**0.189
    assert most_held(both(1.0, 0.0), 5, FIT) == pytest.approx((10 * more, 20 * more))
    assert parted(both(0.0, 1.0), 200, 5, FIT).high == pytest.approx(200 - 40 * 10**0.221)


def test_drops_are_the_mean_of_what_is_known_by_its_shares() -> None:
    assert drops_of(both(0.6, 0.2)) == pytest.approx((0.85, 1.425))
