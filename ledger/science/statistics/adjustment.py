"""Allowing for many suspects: the more are tried, the likelier one stands out by chance.

Guarantees: the chance that any suspect is named when none is a cause stays at or below the level,
however the suspects hang together. Refuses: to look at the outcome when choosing what to test;
only margins count there.

References:
    Holm, A simple sequentially rejective multiple test procedure, Scand. J. Statist. 6 (1979) 65.
    Tarone, A modified Bonferroni method for discrete data, Biometrics 46 (1990) 515 (both from
    memory).
"""

from bisect import bisect_right
from collections.abc import Sequence
from fractions import Fraction


def holm(values: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """Return each p adjusted for all of them, in the order given.

    >>> [str(p) for p in holm([Fraction(1, 100), Fraction(4, 100), Fraction(3, 100)])]
    ['3/100', '3/50', '3/50']
    """
    order = sorted(range(len(values)), key=values.__getitem__)
    adjusted = [Fraction(1)] * len(values)
    highest = Fraction(0)
    for rank, place in enumerate(order):
        highest = max(highest, min(Fraction(1), values[place] * (len(values) - rank)))
        adjusted[place] = highest
    return tuple(adjusted)


def worth_testing(least: Sequence[Fraction], level: Fraction) -> tuple[int, ...]:
    """Return which suspects are worth testing, by the smallest p each could have had.

    A suspect whose margins keep it from ever standing out among so many is left out, and does not
    weigh on the others (Tarone): the smallest number k is taken for which no more than k suspects
    could reach the level divided by k.

    >>> worth_testing([Fraction(1, 126), Fraction(1, 9), Fraction(1, 3)], Fraction(1, 20))
    (0,)
    """
    rising = sorted(least)
    for number in range(1, len(rising) + 1):
        bound = level / number
        if bisect_right(rising, bound) <= number:
            return tuple(place for place, p in enumerate(least) if p <= bound)
    return ()
