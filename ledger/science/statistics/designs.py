"""Designs of trials with two levels: which jars have which of the suspected levels.

Guarantees: in every unit of a design each factor is at its suspected level in half of the jars,
and no two factors go together; units follow each other so that a fraction is filled up to the whole
factorial. Refuses: more factors than the tables have.

References:
    NIST/SEMATECH e-Handbook of Statistical Methods, 5.3.3.4 (fractional factorial designs and
    their generators) and 5.3.3.3.3 (a factorial in blocks); from memory.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from math import prod

Row = tuple[bool, ...]
"""One jar: for each factor whether it is at the suspected level."""

GENERATORS: dict[int, tuple[int, tuple[tuple[int, ...], ...]]] = {
    1: (1, ()),
    2: (2, ()),
    3: (2, ((0, 1),)),
    4: (3, ((0, 1, 2),)),
    5: (3, ((0, 1), (0, 2))),
    6: (3, ((0, 1), (0, 2), (1, 2))),
    7: (3, ((0, 1), (0, 2), (1, 2), (0, 1, 2))),
}
"""For each number of factors how many stand for themselves, and of which the others are products.

The smallest fractions of the handbook's table: C = AB, D = ABC, then D = AB with E = AC, F = BC and
G = ABC.
"""
MOST_FACTORS = max(GENERATORS)
"""So many factors at most."""


def unit_size(factors: int) -> int:
    """Return how many jars a unit has: the fewest that keep so many factors apart.

    >>> [unit_size(factors) for factors in range(1, 8)]
    [2, 4, 4, 8, 8, 8, 8]
    """
    return int(2 ** GENERATORS[factors][0])


def unit(factors: int, number: int = 0) -> tuple[Row, ...]:
    """Return one unit in standard order, the first factor changing quickest.

    Args:
        factors: How many factors.
        number: Which unit of the design, from 0: the signs of the generators change with it, so
            that units one after the other are different fractions.

    >>> unit(2)
    ((False, False), (True, False), (False, True), (True, True))
    >>> set(unit(3, 0)) | set(unit(3, 1)) == set(product((False, True), repeat=3))
    True
    """
    base, generators = GENERATORS[factors]
    turned = _turned(number, generators)
    rows = (tuple(reversed(levels)) for levels in product((False, True), repeat=base))
    return tuple(
        (*row, *(_product(row, of) != turn for of, turn in zip(generators, turned, strict=True)))
        for row in rows
    )


def _turned(number: int, generators: Sequence[Sequence[int]]) -> tuple[bool, ...]:
    # The second unit folds the first over: with the products of two turned, no factor goes any
    # longer with what two others do together. Where there are none it is the other half.
    pairs = sum(1 << place for place, of in enumerate(generators) if len(of) == 2)
    fold = pairs or 2 ** len(generators) - 1
    signs: list[int] = []
    for each in range(2 ** len(generators)):
        signs += [] if each in signs else dict.fromkeys((each, each ^ fold))
    now = signs[number % len(signs)]
    return tuple(bool(now >> place & 1) for place in range(len(generators)))


def _product(row: Row, of: Sequence[int]) -> bool:
    # A product of signs, minus for usual and plus for suspected.
    return sum(not row[place] for place in of) % 2 == 0


def design(factors: int, units: int) -> tuple[Row, ...]:
    """Return the jars of so many units, unit by unit."""
    return tuple(row for number in range(units) for row in unit(factors, number))


def is_whole(rows: Sequence[Row]) -> bool:
    """Return whether every combination of levels is among the jars: a factorial, no fraction.

    >>> is_whole(design(3, 1)), is_whole(design(3, 2))
    (False, True)
    """
    return bool(rows) and len(set(rows)) == 2 ** len(rows[0])


def is_aliased(rows: Sequence[Row]) -> bool:
    """Return whether two causes acting only together could pass for a third.

    >>> [is_aliased(design(*size)) for size in ((3, 1), (3, 2), (4, 1))]
    [True, False, False]
    """
    factors = range(len(rows[0])) if rows else range(0)
    return any(
        abs(sum(_sign(row, (one, other, third)) for row in rows)) == len(rows)
        for one in factors
        for other in factors
        for third in factors
        if one < other < third
    )


def _sign(row: Row, of: Sequence[int]) -> int:
    return prod(1 if row[place] else -1 for place in of)


def effect(rows: Sequence[Row], values: Sequence[Fraction | int], of: Sequence[int]) -> Fraction:
    """Return the effect of a factor, or of several together: mean above less mean below.

    Args:
        rows: The jars of a balanced design.
        values: What was found in each.
        of: The factors, by their places; several are an interaction.

    >>> str(effect(unit(2), [1, 3, 2, 6], [0])), str(effect(unit(2), [1, 3, 2, 6], [0, 1]))
    ('3', '1')
    """
    contrast = sum(_sign(row, of) * value for row, value in zip(rows, values, strict=True))
    return Fraction(2 * contrast) / len(rows)


def evenings(factors: int, units: int, most: int) -> tuple[int, ...]:
    """Return how many jars are made on each evening: whole units, and no more than `most`.

    Where one unit is more than that, an evening has one.

    >>> evenings(3, 4, 8), evenings(1, 7, 8), evenings(4, 3, 6)
    ((8, 8), (8, 6), (8, 8, 8))
    """
    size = unit_size(factors)
    fit = max(1, most // size)
    count = -(-units // fit)
    share, more = divmod(units, count)
    return tuple(size * (share + (evening < more)) for evening in range(count))
