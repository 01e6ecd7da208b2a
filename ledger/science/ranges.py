"""Staying inside a table: numbers as people read them, and the refusal of what lies outside.

Guarantees: what passes is a finite number within its limits. Refuses: all else, in a sentence.
"""

from collections.abc import Sequence

from ledger.errors import RefusedError

Limits = tuple[float, float]
"""The least and the most, both allowed."""


def figure(number: float, places: int = 2) -> str:
    """Return a number with at most so many decimals, no idle zeros and a true minus sign.

    >>> figure(-4.5), figure(998.2012), figure(20.0)
    ('−4.5', '998.2', '20')
    """
    text = f"{number:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text.replace("-", "−")


def within(number: float, limits: Limits, what: str, todo: str) -> float:
    """Return the number when it is within its limits.

    Args:
        number: What was given.
        limits: The least and the most allowed.
        what: The sentence to refuse with; {low}, {high} and {got} are filled in.
        todo: What to do next, as a whole sentence.

    Raises:
        RefusedError: It is outside, or is not a number.
    """
    low, high = limits
    if low <= number <= high:
        return number
    got = next((text for text in _finer(number) if text not in (figure(low), figure(high))), "")
    raise RefusedError(what.format(low=figure(low), high=figure(high), got=got), todo)


def _finer(number: float) -> list[str]:
    return [figure(number, places) for places in (2, 4, 8)] + [repr(number)]


def interpolate(points: Sequence[tuple[float, float]], at: float) -> float:
    """Return the value at a place between points, on the straight line between its neighbours.

    The points rise in their first number; outside them the nearest point's value holds.

    >>> interpolate([(0.0, 0.0), (10.0, -4.0)], 5.0)
    -2.0
    """
    for (left, low), (right, high) in zip(points, points[1:], strict=False):
        if left <= at <= right:
            return low + (high - low) * (at - left) / (right - left)
    return points[0][1] if at < points[0][0] else points[-1][1]
