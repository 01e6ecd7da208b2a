"""A band from own readings holds at the rate it tells, whatever the readings are like."""

import random
from fractions import Fraction

import pytest

from ledger.science.haze.narrowed import FEWEST, narrowed


def test_few_readings_narrow_nothing_and_many_reach_what_is_wanted() -> None:
    assert narrowed([1.0] * (FEWEST - 1)) is None
    ten, many = narrowed([float(n) for n in range(10)]), narrowed([float(n) for n in range(119)])
    assert ten
    assert many
    assert (ten.least, ten.most, ten.chance) == (0, 9, Fraction(9, 11))
    assert (many.least, many.most, many.chance) == (2, 116, Fraction(114, 120))


@pytest.mark.parametrize("count", [10, 19, 40])
def test_the_next_reading_lies_inside_as_often_as_is_told(count: int) -> None:
    """By 4000 draws of a lopsided distribution, to three standard errors."""
    draw = random.Random(count)
    inside, chance = 0, 0.0
    for _ in range(4000):
        *before, after = (draw.lognormvariate(0, 1) ** 3 for _ in range(count + 1))
        found = narrowed(before)
        assert found
        inside += found.least <= after <= found.most
        chance = float(found.chance)
    assert inside / 4000 == pytest.approx(chance, abs=3 * (chance * (1 - chance) / 4000) ** 0.5)
