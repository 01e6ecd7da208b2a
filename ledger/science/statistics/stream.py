"""A stream of numbers that look random and are always the same.

Guarantees: one seed gives one stream, on every machine and Python; no clock and no system is asked.

References:
    Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014: SplitMix64
    (constants from memory).
"""

from collections.abc import Iterator

MASK = 2**64 - 1
"""Numbers are of 64 bits."""
STEP, FIRST, SECOND = 0x9E3779B97F4A7C15, 0xBF58476D1CE4E5B9, 0x94D049BB133111EB
"""What is added for each number, and the two factors that mix it."""


def numbers(seed: int) -> Iterator[int]:
    """Return a stream of numbers of 64 bits."""
    state = seed & MASK
    while True:
        state = (state + STEP) & MASK
        mixed = ((state ^ (state >> 30)) * FIRST) & MASK
        mixed = ((mixed ^ (mixed >> 27)) * SECOND) & MASK
        yield mixed ^ (mixed >> 31)


def uniform(seed: int) -> Iterator[float]:
    """Return a stream of numbers from 0 up to, not with, 1."""
    return ((number >> 11) / 2**53 for number in numbers(seed))
