"""Finding where a rising or falling sum takes a value.

Guarantees: the answer lies between the ends given, to about 14 figures.
"""

from collections.abc import Callable
from functools import partial

_ROUNDS = 100
_FINE = 1e-14


def solve(sum_of: Callable[[float], float], wanted: float, low: float, high: float) -> float:
    """Return where a sum takes the wanted value, by false position (the Illinois variant).

    Args:
        sum_of: A continuous sum that only rises or only falls from `low` to `high`.
        wanted: The value; one beyond those at the ends gives the nearer end.
        low: Where the search begins.
        high: Where it ends.

    >>> round(solve(lambda x: x * x, 2.0, 0.0, 2.0), 12)
    1.414213562373
    """
    off = partial(_off, sum_of, wanted)
    left, right, off_left, off_right = low, high, off(low), off(high)
    if off_left * off_right >= 0:
        return low if abs(off_left) <= abs(off_right) else high
    for _ in range(_ROUNDS):
        at = (left * off_right - right * off_left) / (off_right - off_left)
        off_at = off(at)
        if off_at * off_right < 0:
            left, off_left = right, off_right
        else:
            # The end that stayed is taken for nearer than it is, or the search would creep from one
            # side.
            off_left /= 2
        close = abs(right - at) <= _FINE * (high - low)
        right, off_right = at, off_at
        if off_at == 0 or close:
            break
    return right


def _off(sum_of: Callable[[float], float], wanted: float, at: float) -> float:
    return sum_of(at) - wanted


def polynomial(coefficients: tuple[float, ...], at: float) -> float:
    """Return c0 + c1·x + c2·x² + ... by Horner's rule.

    >>> polynomial((1.0, 2.0, 3.0), 2.0)
    17.0
    """
    total = 0.0
    for coefficient in reversed(coefficients):
        total = total * at + coefficient
    return total
