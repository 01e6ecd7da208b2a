"""Amounts rounded to what can be weighed or measured, for those that are asked for.

Guarantees: three significant digits where they lie within the limits, else as many more as it
takes, and a half of the third as it is; limits are rounded inwards, so that what is shown as within
is within. Refuses: to stand in for the exact amount, which is what an entry is compared with.
"""

from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.masters import FormulaLine
from ledger.domain.masters.formulas import WHOLE_MPCT, Wanted

DIGITS = 3
"""Significant digits of an amount that is asked for (common practice, no source)."""
SHARE = 5
"""A limit is rounded by at most this part of the way to the amount."""


def weighable(
    amount: int, measure: Measure, least: int | None = None, most: int | None = None
) -> int:
    """Return an amount as it is asked for at the bench; things that are counted stay as they are.

    Args:
        amount: The exact amount, in the measure's smallest unit.
        measure: Its measure.
        least: The least that is allowed; None when nothing says so.
        most: The most that is allowed.

    >>> weighable(26_667, Measure.MG), weighable(2_466_700, Measure.UL)
    (26700, 2470000)
    >>> weighable(112_500, Measure.UL)
    112500
    >>> weighable(26_667, Measure.MG, least=26_640, most=26_694)
    26670
    """
    if measure is Measure.UEACH or 2 * amount % _steps(amount)[0] == 0:
        return amount
    low = amount if least is None else least
    high = amount if most is None else most
    has_limits = least is not None or most is not None
    for step in _steps(amount):
        rounded = _to(amount, step, round)
        if not has_limits or low <= rounded <= high:
            return rounded
    return amount


def asked(line: Wanted) -> int:
    """Return how much a line of a formula asks for; as the formula has it, where nothing scales."""
    if line.amount == _as_written(line.line):
        return line.amount
    return weighable(line.amount, line.measure, line.least, line.most)


def _as_written(line: FormulaLine) -> int:
    """Return the amount of a line for its formula's own volume."""
    return round(line.amount.amount * (1 + Fraction(line.overage_mpct or 0, WHOLE_MPCT)))


def limits_asked(line: Wanted) -> tuple[int, int] | None:
    """Return the limits of a line of a formula as they are shown; None where there are none."""
    if line.least is None or line.most is None:
        return None
    return limits_shown(line.amount, line.measure, line.least, line.most)


def limits_shown(amount: int, measure: Measure, least: int, most: int) -> tuple[int, int]:
    """Return limits rounded inwards, by a fifth of the way to the amount at most.

    >>> limits_shown(26_667, Measure.MG, 25_867, 27_467)
    (25900, 27400)
    """
    if measure is Measure.UEACH:
        return least, most
    return _inwards(least, amount - least, ceil), _inwards(most, most - amount, floor)


def _inwards(limit: int, way: int, inwards: Callable[[Fraction], int]) -> int:
    steps = (step for step in _steps(limit) if step * SHARE <= way)
    return _to(limit, next(steps, 1), inwards)


def _steps(amount: int) -> tuple[int, ...]:
    """Return the values of the last digit kept, for three significant digits and more."""
    most = max(len(str(abs(amount))) - DIGITS, 0)
    return tuple(10**power for power in range(most, -1, -1))


def _to(amount: int, step: int, rounded: Callable[[Fraction], int]) -> int:
    return rounded(Fraction(amount, step)) * step
