"""A stream of numbers that look random and are always the same.

Guarantees: one seed gives one stream, on every machine and Python; no clock and no system is asked.

References:
    Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014: SplitMix64
    (constants from memory).
"""

from collections.abc import Iterator
from struct import unpack

MASK = 2**64 - 1
"""Numbers are of 64 bits."""
STEP, FIRST, SECOND = 0x9E3779B97F4A7C15, 0xBF58476D1CE4E5B9, 0x94D049BB133111EB
"""What is added for each number, and the two factors that mix it."""
LANE = 128
"""Bits between numbers that are mixed together: no product reaches the next one."""
ABREAST = 256
"""So many are mixed together; one whole number of Python holds them all."""
ONES = sum(1 << LANE * place for place in range(ABREAST))
"""One in every lane."""
LOW = MASK * ONES
"""The bits of every lane that count."""
STEPS = sum((STEP * (place + 1) & MASK) << LANE * place for place in range(ABREAST))
"""What is added for each of them, from the first on."""


def numbers(seed: int) -> Iterator[int]:
    """Return a stream of numbers of 64 bits."""
    for mixed in _mixed(seed):
        yield from mixed


def uniform(seed: int) -> Iterator[float]:
    """Return a stream of numbers from 0 up to, not with, 1."""
    for mixed in _mixed(seed):
        yield from [(number >> 11) / 2**53 for number in mixed]


def _mixed(seed: int) -> Iterator[tuple[int, ...]]:
    state = seed & MASK
    while True:
        # A step for each number is enough to mix many at once, which is several times as quick.
        mixed = (STEPS + state * ONES) & LOW
        mixed = ((mixed ^ (mixed >> 30 & LOW)) * FIRST) & LOW
        mixed = ((mixed ^ (mixed >> 27 & LOW)) * SECOND) & LOW
        mixed ^= mixed >> 31 & LOW
        yield unpack(f"<{2 * ABREAST}Q", mixed.to_bytes(ABREAST * LANE // 8, "little"))[::2]
        state = (state + STEP * ABREAST) & MASK
