"""A reading beside what is reckoned: apart only beyond the doubt of both."""

import pytest

from ledger.domain.entries.choices import Measured
from ledger.domain.lots.readings import Reading, Reckoned, told_apart


@pytest.mark.parametrize(
    ("measured", "is_apart"), [(86.9, True), (87.0, False), (92.0, False), (92.1, True)]
)
def test_a_reading_is_apart_beyond_the_doubt_of_both_from_the_nearer_end(
    measured: float, is_apart: bool
) -> None:
    """The doubts are put together by the root of their squares: hypot(1.0, 1.8) is 2.06."""
    told = Reckoned(measured, 1.0, 89.0, 90.0, 90.0, 1.8)
    assert (round(told.doubt, 2), told.is_apart) == (2.06, is_apart)


def test_a_difference_is_told_with_both_figures_and_the_doubt() -> None:
    told = Reckoned(70.0, 1.0, 88.2, 90.0, 90.0, 1.8)
    assert told_apart(Reading("OE-001-5", Measured.ABV, told)) == (
        "OE-001-5 was measured at 70.0 % vol, and the book reckons 90.0 % vol, which an instrument "
        "may show as 88.2 to 90.0; for the doubt of both they may differ by 2.1."
    )


def test_what_an_instrument_shows_is_told_only_where_it_is_more_than_one_figure() -> None:
    told = Reckoned(1.2, 0.002, 1.29, 1.29, 1.29, 0.006)
    assert told_apart(Reading("PS-001-7", Measured.DENSITY, told)) == (
        "PS-001-7 was measured at 1.200 g/mL, and the book reckons 1.290 g/mL; for the doubt of "
        "both they may differ by 0.006."
    )
