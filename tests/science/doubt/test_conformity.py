"""A figure in doubt is below a limit, above it, or too close to tell."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from ledger.science.doubt.conformity import Verdict, verdict
from tests.science.published import REFERENCE

BELOW, ABOVE, UNDECIDED = Verdict.BELOW, Verdict.ABOVE, Verdict.UNDECIDED
FIGURES = st.floats(-1e6, 1e6)


def test_the_zener_diode_is_too_close_to_tell() -> None:
    """JCGM 106:2012, 7.3 (from memory): -5.47 V, u = 0.05 V, 92 % sure, not 97.7."""
    (told,) = (
        item
        for item in json.loads((REFERENCE / "statistics.json").read_text(encoding="utf-8"))
        if item["name"] == "jcgm106_zener"
    )
    estimate, standard = told["data"]["estimate"], told["data"]["u"]
    assert round(float(norm.cdf(-5.40, estimate, standard)), 2) == told["published"]["p"]
    assert verdict(estimate, 2 * standard, -5.40, at_limit=BELOW) is UNDECIDED
    # With a third of the doubt it conforms.
    assert verdict(estimate, 2 * standard / 3, -5.40, at_limit=BELOW) is BELOW


@pytest.mark.parametrize(
    ("figure", "half_width", "limit", "at_limit", "expected"),
    [
        (59.8, 0.4, 60.0, ABOVE, UNDECIDED),
        (0.49, 0.02, 0.5, ABOVE, UNDECIDED),
        (0.49, 0.01, 0.5, ABOVE, BELOW),
        (0.52, 0.02, 0.5, BELOW, ABOVE),
        (0.5, 0.0, 0.5, BELOW, BELOW),
        (0.5, 0.0, 0.5, ABOVE, ABOVE),
        (0.0, 0.0, 0.0, BELOW, BELOW),
        (0.001, 0.0, 0.0, BELOW, ABOVE),
        (3.0, 5.0, 0.0, BELOW, UNDECIDED),
        (0.3, 0.0, 0.1 + 0.1 + 0.1, ABOVE, ABOVE),
    ],
)
def test_a_figure_is_told_by_the_whole_of_its_interval(
    figure: float, half_width: float, limit: float, at_limit: Verdict, expected: Verdict
) -> None:
    """Guarded acceptance and rejection; without doubt, the limit's own side at the limit."""
    assert verdict(figure, half_width, limit, at_limit=at_limit) is expected


@given(FIGURES, st.floats(1e-3, 1e6), FIGURES)
def test_what_is_told_is_true_in_at_least_97_of_100(
    figure: float, standard: float, limit: float
) -> None:
    """With a coverage factor of 2 the wrong side has a chance of at most 2.3 % (scipy)."""
    told = verdict(figure, 2 * standard, limit, at_limit=BELOW)
    chance = float(norm.cdf(limit, figure, standard))
    if told is BELOW:
        assert chance > 0.97
    elif told is ABOVE:
        assert chance < 0.03
