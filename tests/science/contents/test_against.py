"""A figure beside a limit has a verdict that agrees with whether the limit is passed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit
from ledger.domain.masters.limits import is_passed
from ledger.science.contents.against import Compared, Daily
from ledger.science.doubt.conformity import Verdict


def _limit(bound: Bound) -> Limit:
    return Limit(
        "x", "alcohol", bound, 500_000, LimitUnit.PERCENT_VOL, LimitBasis.IN_DRINK, "EU",
        "a source", KnownBy.READ,
    )  # fmt: skip


@given(st.sampled_from(Bound), st.sampled_from([0.4, 0.5, 0.6]))
def test_without_doubt_above_is_what_is_passed(bound: Bound, figure: float) -> None:
    """Also just at the limit, by whether the bound takes it in."""
    limit = _limit(bound)
    item = Compared(limit, figure, is_passed(figure, limit))
    assert (item.verdict is Verdict.ABOVE) == item.is_passed


@pytest.mark.parametrize(
    ("figure", "doubt", "verdict"),
    [(0.49, 0.02, Verdict.UNDECIDED), (0.47, 0.02, Verdict.BELOW), (0.53, 0.02, Verdict.ABOVE)],
)
def test_with_its_doubt_a_figure_may_be_too_close_to_tell(
    figure: float, doubt: float, verdict: Verdict
) -> None:
    assert Compared(_limit(Bound.FROM), figure, False, doubt).verdict is verdict


def test_a_daily_ceiling_is_told_by_what_a_glass_takes_of_it() -> None:
    """30 mg a day for 60 kg: 29 mg, give or take 2, are too close to tell."""
    limit = _limit(Bound.AT_MOST)
    taken = Daily(limit, "adult", 60, 30.0, 96.7, 29.0, 2.0)
    assert (taken.verdict, taken.is_passed) == (Verdict.UNDECIDED, False)
    assert Daily(limit, "child", 20, 10.0, 290.0, 29.0, 2.0).verdict is Verdict.ABOVE
    assert Daily(limit, "adult", 60, 0.0, None, 29.0).verdict is Verdict.ABOVE


def test_a_glass_that_takes_just_a_ceiling_has_kept_it() -> None:
    taken = Daily(_limit(Bound.AT_MOST), "adult", 60, 30.0, 100.0, 30.0)
    assert (taken.verdict, taken.is_passed) == (Verdict.BELOW, False)
