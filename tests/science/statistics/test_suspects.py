"""The words of the comparison: causes that went together, and the jars of a trial."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.science.statistics.suspects import Cause, Crossing, Sort
from tests.science.statistics.suspected import suspect


def test_a_suspect_is_all_that_always_went_together() -> None:
    oil, spirit = Cause(Sort.LOT, "OIL-1"), Cause(Sort.LOT, "SPIRIT-1")
    assert replace(suspect(oil), not_separable_from=(spirit,)).causes == (oil, spirit)


@pytest.mark.parametrize(("arms", "has_control", "jars"), [(1, True, 8), (2, False, 8)])
def test_the_control_takes_as_many_jars_as_an_arm(arms: int, has_control: bool, jars: int) -> None:
    causes = tuple(Cause(Sort.LOT, f"OIL-{number}") for number in range(arms))
    assert Crossing(causes, has_control, 4, Fraction(1, 35)).jars == jars
