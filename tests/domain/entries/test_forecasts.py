"""What was foretold is told by what is looked at, narrowed by own readings or as it was."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries.choices import LookedAt
from ledger.domain.entries.forecasts import Foretold, narrowed_band

TOLD = Foretold(
    "orange",
    neat_low_milli=0,
    neat_high_milli=3_000,
    syrup_low_milli=4_000,
    syrup_high_milli=400_000,
    glass_high_milli=5_000,
)
OWN = Foretold(
    "orange",
    syrup_low_milli=4_000,
    syrup_high_milli=400_000,
    own_least_micro=500_000,
    own_most_micro=2_000_000,
)
NEAT, SYRUP, GLASS = LookedAt.NEAT, LookedAt.IN_SYRUP, LookedAt.AS_POURED


@pytest.mark.parametrize(
    ("told", "looked_at", "band"),
    [
        (TOLD, NEAT, (0.0, 3.0)),
        (TOLD, SYRUP, (4.0, 400.0)),
        (TOLD, GLASS, None),
        (OWN, SYRUP, (20.0, 80.0)),
        (OWN, NEAT, None),
        (replace(OWN, own_most_micro=None), SYRUP, (4.0, 400.0)),
        (replace(OWN, own_least_micro=None), SYRUP, (4.0, 400.0)),
    ],
)
def test_a_band_is_of_what_is_looked_at_and_narrowed_where_both_ends_are_known(
    told: Foretold, looked_at: LookedAt, band: tuple[float, float] | None
) -> None:
    """The middle of 4 and 400 NTU is 40; a half and twice of it are 20 and 80."""
    assert told.band(looked_at) == band


@pytest.mark.parametrize(
    ("told", "looked_at", "middle"),
    [(TOLD, NEAT, None), (TOLD, SYRUP, 40.0), (TOLD, GLASS, None), (OWN, SYRUP, 40.0)],
)
def test_the_middle_of_a_band_is_that_of_its_logarithms_and_none_where_it_begins_at_nought(
    told: Foretold, looked_at: LookedAt, middle: float | None
) -> None:
    assert told.middle(looked_at) == middle


def test_a_band_that_begins_at_nought_is_not_narrowed() -> None:
    assert narrowed_band(0.0, 3.0, 0.5, 2.0) == (0.0, 3.0)
    assert narrowed_band(0.01, 4.0, 0.5, 2.0) == pytest.approx((0.1, 0.4))
