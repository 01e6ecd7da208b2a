"""Doubt goes through a sum as the GUM has it, and as a Monte Carlo run finds it."""

import json
from collections.abc import Mapping
from math import hypot, sqrt

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.doubt.propagation import Input, propagated
from tests.science.published import REFERENCE

EXAMPLES = {
    item["name"]: item
    for item in json.loads((REFERENCE / "statistics.json").read_text(encoding="utf-8"))
}


def _length(of: Mapping[str, float]) -> float:
    """JCGM 100:2008, H.1: an end gauge compared with a standard, in nm."""
    difference = of["d0"] + of["d1"] + of["d2"]
    expansion = of["d_alpha"] * (of["theta"] + of["delta"]) + of["alpha"] * of["d_theta"]
    return of["ls"] + difference - of["ls"] * expansion


def test_the_end_gauge_of_the_gum_has_its_published_doubt() -> None:
    """JCGM 100:2008, H.1 (through the GTC documentation): 50 000 838 nm, u = 32 nm."""
    told = EXAMPLES["gum_H1"]
    data, published = told["data"], told["published"]
    inputs = {
        "ls": Input(*data["l_s"]),
        **{name: Input(*data[name]) for name in ("d0", "d1", "d2")},
        "alpha": Input(11.5e-6, 2e-6 / sqrt(3)),
        "d_alpha": Input(0.0, 1e-6 / sqrt(3), 50),
        "d_theta": Input(0.0, 0.05 / sqrt(3), 2),
        "theta": Input(data["theta_bar"][0], data["theta_bar"][1]),
        "delta": Input(0.0, 0.5 / sqrt(2)),
    }
    found = propagated(_length, inputs)
    assert round(found.value) == published["l_nm"]
    assert round(found.standard) == published["u_nm"]
    assert found.greatest == "ls"
    for name, share in published["budget_nm"].items():
        assert found.shares[name] == pytest.approx(share, abs=0.001)
    assert found.standard == pytest.approx(told["computed"]["u"], rel=1e-4)
    assert found.freedom == pytest.approx(told["computed"]["nu_eff"], rel=1e-4)


def test_a_share_of_a_volume_has_the_doubt_that_a_monte_carlo_run_finds() -> None:
    """JCGM 101:2008: a million draws; first order is enough where doubts are a few per cent."""
    inputs = {"mass": Input(1200.0, 12.0), "ml": Input(500.0, 3.0), "ppm": Input(4e5, 8e3)}
    found = propagated(lambda of: of["mass"] * of["ppm"] / 1e6 / of["ml"], inputs)
    draws = numpy.random.default_rng(20)
    mass, ml, ppm = (draws.normal(item.value, item.standard, 10**6) for item in inputs.values())
    drawn = mass * ppm / 1e6 / ml
    assert found.value == pytest.approx(drawn.mean(), rel=1e-3)
    assert found.standard == pytest.approx(drawn.std(), rel=1e-2)


@given(st.lists(st.floats(0, 1e6), min_size=1, max_size=6))
def test_doubts_of_a_sum_add_by_squares(doubts: list[float]) -> None:
    """JCGM 100:2008, 5.1.2, for a sum of independent inputs."""
    inputs = {str(place): Input(0.0, doubt) for place, doubt in enumerate(doubts)}
    found = propagated(lambda of: sum(of.values()), inputs)
    assert found.standard == pytest.approx(hypot(*doubts), rel=1e-9)


def test_what_nobody_doubts_stays_without_a_doubt() -> None:
    """A figure of exact inputs has no doubt, and none that adds most."""
    found = propagated(lambda of: of["a"], {"a": Input(3.0)})
    assert (found.value, found.half_width, found.greatest) == (3.0, 0.0, None)


def test_a_doubt_below_nothing_is_refused() -> None:
    """A half width that is negative is no doubt."""
    with pytest.raises(ValueError, match=r"^A standard uncertainty is never below nothing\.$"):
        propagated(lambda of: of["a"], {"a": Input(3.0, -1.0)})
