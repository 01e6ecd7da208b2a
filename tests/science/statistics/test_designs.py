"""Designs keep every factor apart from every other, and their effects are the published ones."""

import json
from itertools import combinations, product
from pathlib import Path
from typing import Any

import pytest

from ledger.science.statistics.designs import (
    MOST_FACTORS,
    design,
    effect,
    evenings,
    is_aliased,
    is_whole,
    unit,
    unit_size,
)

FACTORIALS = json.loads(
    (Path(__file__).parents[2] / "reference" / "factorials.json").read_text(encoding="utf-8")
)
"""Worked factorials, each with its source."""


@pytest.mark.parametrize("example", FACTORIALS, ids=lambda example: example["name"])
def test_effects_of_worked_factorials_are_the_published_ones(example: dict[str, Any]) -> None:
    values = example["standard_order_y"]
    factors = len(values).bit_length() - 1
    rows = [
        tuple(reversed(levels)) for levels in product((False, True), repeat=factors)
    ]  # standard order: the first factor changes quickest
    wanted = {**example["effects"], **example["published"]}
    found = {
        name: float(effect(rows, values, ["ABCD".index(letter) for letter in name]))
        for name in wanted
    }
    assert found == pytest.approx(wanted)


@pytest.mark.parametrize("factors", range(1, MOST_FACTORS + 1))
@pytest.mark.parametrize("number", range(5))
def test_in_every_unit_each_factor_is_half_and_half_and_no_two_go_together(
    factors: int, number: int
) -> None:
    rows = unit(factors, number)
    assert len(rows) == unit_size(factors)
    for factor in range(factors):
        assert sum(row[factor] for row in rows) * 2 == len(rows)
    for one, other in combinations(range(factors), 2):
        together = [row for row in rows if row[one] and row[other]]
        assert len(together) * 4 == len(rows)


def test_the_fractions_are_those_of_the_handbook() -> None:
    """C = AB, D = ABC, and D = AB with E = AC: NIST/SEMATECH e-Handbook 5.3.3.4.7, from memory.

    Plus stands for the suspected level.
    """
    signs = {True: 1, False: -1}
    for row in unit(3):
        assert signs[row[2]] == signs[row[0]] * signs[row[1]]
    for row in unit(4):
        assert signs[row[3]] == signs[row[0]] * signs[row[1]] * signs[row[2]]
    for row in unit(5):
        assert signs[row[3]] == signs[row[0]] * signs[row[1]]
        assert signs[row[4]] == signs[row[0]] * signs[row[2]]


@pytest.mark.parametrize("factors", range(1, MOST_FACTORS + 1))
def test_units_one_after_the_other_fill_the_factorial(factors: int) -> None:
    whole = 2**factors
    units = whole // unit_size(factors)
    assert is_whole(design(factors, units))
    assert len(set(design(factors, units))) == whole
    assert units == 1 or not is_whole(design(factors, units - 1))


@pytest.mark.parametrize("factors", range(1, MOST_FACTORS + 1))
def test_after_all_fractions_they_come_again_in_their_order(factors: int) -> None:
    period = 2**factors // unit_size(factors)
    for number in range(3 * period):
        assert unit(factors, number) == unit(factors, number + period)
    assert is_whole([(True,)]) is False


def test_two_units_free_each_factor_of_what_two_others_do_together() -> None:
    """A fold-over: NIST/SEMATECH e-Handbook 5.3.3.8.1, from memory."""
    for factors in range(3, MOST_FACTORS + 1):
        assert is_aliased(design(factors, 1)) == (factors != 4)
        assert not is_aliased(design(factors, 2))
    # Of one unit alone any two pass for a third, and of none there is nothing to pass.
    assert [is_aliased([(False,) * factors][:units]) for factors, units in ((3, 1), (2, 1), (1, 0))
            ] == [True, False, False]  # fmt: skip


def test_evenings_hold_whole_units_and_all_of_them() -> None:
    for factors, units in product(range(1, MOST_FACTORS + 1), range(1, 12)):
        parts = evenings(factors, units, 8)
        assert sum(parts) == units * unit_size(factors)
        assert all(part <= 8 and part % unit_size(factors) == 0 for part in parts)
