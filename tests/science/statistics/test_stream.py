"""A stream that looks random and is always the same."""

from itertools import islice

from scipy.stats import kstest

from ledger.science.statistics.stream import (
    ABREAST,
    FIRST,
    MASK,
    SECOND,
    STEP,
    numbers,
    uniform,
)


def test_the_first_numbers_are_those_of_splitmix64() -> None:
    """Seed 1234567, as lists of test values give them (from memory)."""
    assert list(islice(numbers(1234567), 3)) == [
        6457827717110365317,
        3203168211198807973,
        9817491932198370423,
    ]


def test_numbers_that_are_mixed_together_are_those_mixed_one_by_one() -> None:
    state, wanted = 2**64 - 5, []
    for _ in range(3 * ABREAST):
        state = (state + STEP) & MASK
        mixed = ((state ^ (state >> 30)) * FIRST) & MASK
        mixed = ((mixed ^ (mixed >> 27)) * SECOND) & MASK
        wanted.append(mixed ^ (mixed >> 31))
    assert list(islice(numbers(2**64 - 5), 3 * ABREAST)) == wanted
    assert list(islice(uniform(2**64 - 5), 9)) == [(each >> 11) / 2**53 for each in wanted[:9]]


def test_numbers_are_spread_evenly() -> None:
    found = list(islice(uniform(18), 5000))
    assert 0 <= min(found) < max(found) < 1
    assert kstest(found, "uniform").pvalue > 0.001
