"""Charts have the limits of the published example, and none of too few figures."""

import pytest

from ledger.science.statistics.charts import chart

FLOW = (49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)
"""Flow rates of ten batches: NIST/SEMATECH e-Handbook 6.3.2.2 (from memory)."""


def test_the_limits_of_ten_flow_rates_are_the_published_ones() -> None:
    found = chart(FLOW)
    assert found is not None
    assert found.mean == pytest.approx(50.81)
    assert found.mean_range == pytest.approx(1.8778, abs=5e-5)
    assert (found.low, found.high) == pytest.approx((45.8159, 55.8041), abs=2e-4)
    assert (found.outside, found.jumps) == ((), ())


def test_what_lies_outside_and_what_jumps_is_named() -> None:
    found = chart((*FLOW, *FLOW, 90.0))
    assert found is not None
    assert (found.outside, found.jumps) == ((20,), (20,))


def test_no_limit_is_below_what_a_figure_can_be() -> None:
    near = (0.4, 2.0, 0.3, 1.8, 0.2, 2.2, 0.5, 1.9, 0.1, 2.1)
    free, held = chart(near), chart(near, 0.0)
    assert free is not None
    assert held is not None
    assert free.low < 0.0 == held.low
    assert (held.mean, held.high) == (free.mean, free.high)


def test_nine_figures_have_no_limits() -> None:
    assert chart(FLOW[:9]) is None
