"""A stream that looks random and is always the same."""

from itertools import islice

from scipy.stats import kstest

from ledger.science.statistics.stream import numbers, uniform


def test_the_first_numbers_are_those_of_splitmix64() -> None:
    """Seed 1234567, as lists of test values give them (from memory)."""
    assert list(islice(numbers(1234567), 3)) == [
        6457827717110365317,
        3203168211198807973,
        9817491932198370423,
    ]


def test_numbers_are_spread_evenly() -> None:
    found = list(islice(uniform(18), 5000))
    assert 0 <= min(found) < max(found) < 1
    assert kstest(found, "uniform").pvalue > 0.001
