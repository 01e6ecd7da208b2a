"""Finding where a sum takes a value."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.ranges import figure, interpolate
from ledger.science.roots import polynomial, solve


@given(root=st.floats(0.001, 1), power=st.integers(1, 9), sign=st.sampled_from([1, -1]))
def test_it_is_found_on_rising_and_falling_sums(root: float, power: int, sign: int) -> None:
    found = solve(lambda x: sign * x**power, sign * root**power, 0, 1)
    assert found**power == pytest.approx(root**power, abs=1e-12)


@pytest.mark.parametrize(("wanted", "end"), [(-3, 2), (3.99, 2), (4, 2), (40, 5), (25, 5)])
def test_beyond_the_ends_it_is_the_nearer_end(wanted: float, end: float) -> None:
    assert solve(lambda x: x * x, wanted, 2, 5) == end


def test_where_both_ends_are_as_near_it_is_the_low_one() -> None:
    assert solve(lambda _: 1.0, 3.0, 2, 5) == 2


@given(st.lists(st.floats(-10, 10), min_size=1, max_size=6), st.floats(-2, 2))
def test_a_polynomial_is_the_sum_of_its_terms(terms: list[float], at: float) -> None:
    expected = sum(term * at**k for k, term in enumerate(terms))
    assert polynomial(tuple(terms), at) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(("at", "value"), [(-1, 5), (0, 5), (1, 7), (2, 9), (3, 9)])
def test_between_points_it_is_straight_and_outside_it_holds(at: float, value: float) -> None:
    assert interpolate([(0, 5.0), (2, 9.0)], at) == value


@pytest.mark.parametrize(
    ("number", "text"), [(-0.001, "0"), (100, "100"), (0.1 + 0.2, "0.3"), (-2.5, "−2.5")]
)
def test_a_figure_has_no_idle_zeros(number: float, text: str) -> None:
    assert figure(number) == text
