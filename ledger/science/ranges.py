"""Staying inside a table: numbers as people read them, and the refusal of what lies outside.

Guarantees: what passes is a finite number within its limits. Refuses: all else, in a sentence.
"""

from collections.abc import Sequence
from itertools import pairwise

from ledger.errors import RefusedError

Limits = tuple[float, float]
"""The least and the most, both allowed."""
_HAIR = 1e-9


def figure(number: float, places: int = 2) -> str:
    """Return a number with at most so many decimals, no idle zeros and a true minus sign.

    >>> figure(-4.5), figure(998.2012), figure(20.0)
    ('−4.5', '998.2', '20')
    >>> figure(-0.001), figure(100.0, 0), figure(-1.005, 3)
    ('0', '100', '−1.005')
    """
    text = f"{number:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    # Rounding may leave a nought below zero.
    return "0" if text == "-0" else text.replace("-", "−")


def significant(value: float, digits: int = 3, *, is_whole_kept: bool = False) -> str:
    """Return a figure rounded to so many digits, without an exponent.

    Args:
        value: The figure.
        digits: How many digits it is worth.
        is_whole_kept: Whether all digits before the point are told, however many.

    >>> significant(63.7412), significant(0.0421), significant(1234.5), significant(0)
    ('63.7', '0.0421', '1230', '0')
    >>> significant(1234.5, is_whole_kept=True), significant(0.00002), significant(-4.256)
    ('1234', '0.00002', '-4.26')
    >>> significant(9.996), significant(99.96), significant(1000.0), significant(0.1, 1)
    ('10', '100', '1000', '0.1')
    >>> significant(1000.4, is_whole_kept=True), significant(999.44, is_whole_kept=True)
    ('1000', '999')
    """
    if not value:
        return "0"
    if is_whole_kept and abs(value) >= 10**digits:
        return f"{value:.0f}"
    # Rounded first: 9.996 to three digits is 10.0, with a digit more before the point.
    rounded = float(f"{value:.{digits}g}")
    places = max(0, digits - 1 - int(f"{rounded:e}".split("e")[1]))
    text = f"{rounded:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def within(number: float, limits: Limits, what: str, todo: str) -> float:
    """Return the number when it is within its limits; a hair outside is taken as the limit.

    Sums that lead back to an end of the table miss it by their own rounding.

    Args:
        number: What was given.
        limits: The least and the most allowed.
        what: The sentence to refuse with; {low}, {high} and {got} are filled in.
        todo: What to do next, as a whole sentence.

    Raises:
        RefusedError: It is outside, or is not a number.

    >>> [within(number, (0.0, 1.0), "", "") for number in (-1e-10, 0.5, 1 + 1e-10)]
    [0.0, 0.5, 1.0]
    >>> within(1.00001, (0.0, 1.0), "{got} is not from {low} to {high}.", "Ask for less.")
    Traceback (most recent call last):
    ledger.errors.RefusedError: 1.00001 is not from 0 to 1. Ask for less.
    >>> within(10 - 2e-9, (10.0, 11.0), "{got} is not from {low} to {high}.", "Ask for more.")
    Traceback (most recent call last):
    ledger.errors.RefusedError: 9.999999998 is not from 10 to 11. Ask for more.
    >>> within(-2e-9, (0.0, 1.0), "{got} is not from {low} to {high}.", "Ask for more.")
    Traceback (most recent call last):
    ledger.errors.RefusedError: −0.000000002 is not from 0 to 1. Ask for more.
    """
    low, high = limits
    hair = _HAIR * (high - low)
    if low - hair <= number <= high + hair:
        return min(max(number, low), high)
    raise RefusedError(
        what.format(low=figure(low), high=figure(high), got=_apart(number, limits)), todo
    )


def _apart(number: float, limits: Limits) -> str:
    """Return a number with as few decimals as tell it from the limits."""
    texts = [figure(number, places) for places in (2, 4, 8, 12)]
    shown = [figure(limit) for limit in limits]
    return next((text for text in texts if text not in shown), texts[-1])


def interpolate(points: Sequence[tuple[float, float]], at: float) -> float:
    """Return the value at a place between points, on the straight line between its neighbours.

    The points rise in their first number; outside them the nearest point's value holds.

    >>> interpolate([(0.0, 0.0), (10.0, -4.0)], 5.0)
    -2.0
    >>> points = [(0.0, 1.0), (10.0, 5.0), (20.0, 6.0)]
    >>> [interpolate(points, at) for at in (-5.0, 0.0, 2.5, 10.0, 15.0, 20.0, 99.0)]
    [1.0, 1.0, 2.0, 5.0, 5.5, 6.0, 6.0]
    """
    for (left, low), (right, high) in pairwise(points):
        if left <= at <= right:
            return low + (high - low) * (at - left) / (right - left)
    return points[0][1] if at < points[0][0] else points[-1][1]
