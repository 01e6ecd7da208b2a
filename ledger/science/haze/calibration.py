"""Calibrating cosolvency on what is published of oils in spirit, judged by what was left out.

Guarantees: every group of oils counts once, however often its statements copy one another; the band
is as wide as the errors of groups that were left out; and how many statements lie in the band is
counted with their own group left out of both the slope and the width. Refuses: to judge a statement
by a calibration that it was part of.
"""

from collections.abc import Callable, Sequence
from math import atan, cos, pi, sin, sqrt
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from ledger.science.haze.strength import Calibration, Oil, doubt, middle, thirst
from ledger.science.roots import solve

LEVEL = 0.95
"""How sure the band is meant to be."""
_ROUNDS = 30
"""Rounds of the fit, which settles in a handful."""


class Statement(Struct, frozen=True):
    """What is published of one oil in spirit of one strength."""

    label: str
    """Which it is."""
    group: str
    """The oils that are left out with it."""
    oil: Oil
    """What it is made of."""
    oil_share: float
    """Which share of oil and spirit together the oil is by volume."""
    stated: float
    """The strength in % vol."""
    least: float
    """The strength that is taken for the least: below a limit that every good lot is to meet."""
    is_fitted: bool = True
    """Whether the slope is fitted on it too."""


class Judged(NamedTuple):
    """A statement beside what is foretold of it with its group left out."""

    statement: Statement
    """The statement."""
    likely: float
    """The strength foretold."""
    half: float
    """Half of the band."""

    @property
    def is_inside(self) -> bool:
        """Whether the strength stated lies in the band."""
        return abs(self.statement.stated - self.likely) <= self.half


def calibrate(statements: Sequence[Statement]) -> Calibration:
    """Return the slope that statements ask for, and how far the band must reach."""
    fitted = [item for item in statements if item.is_fitted]
    return replace(_fit(fitted), reach=_reach(fitted))


def judge(statements: Sequence[Statement]) -> list[Judged]:
    """Return every statement with the band that all other groups give it."""
    judged = []
    for inside, outside in _left_out(statements):
        calibration = calibrate(outside)
        for item in inside:
            half = calibration.reach * doubt(item.oil, item.oil_share, calibration)
            judged.append(Judged(item, middle(item.oil, item.oil_share, calibration), half))
    return judged


def _left_out(
    statements: Sequence[Statement],
) -> list[tuple[list[Statement], list[Statement]]]:
    """Return for each group the statements in it and those outside."""
    return [
        (
            [item for item in statements if item.group == group],
            [item for item in statements if item.group != group],
        )
        for group in sorted({item.group for item in statements})
    ]


def _reach(statements: Sequence[Statement]) -> float:
    """Return half of the band in units of doubt: Student's quantile of the errors left out."""
    squares = 0.0
    groups = _left_out(statements)
    for inside, outside in groups:
        calibration = _fit(outside)
        errors = [
            (item.least - middle(item.oil, item.oil_share, calibration))
            / doubt(item.oil, item.oil_share, calibration)
            for item in inside
        ]
        squares += sum(error**2 for error in errors) / len(errors)
    return sqrt(squares / len(groups)) * student(LEVEL, len(groups) - 2)


def _fit(statements: Sequence[Statement]) -> Calibration:
    """Return slope and constant of least squares, each group counting once (Gauss-Newton)."""
    counts = {item.group: 0 for item in statements}
    for item in statements:
        counts[item.group] += 1
    rows = [
        (*thirst(item.oil, item.oil_share), item.least, 1 / counts[item.group])
        for item in statements
    ]
    slope, constant = 0.93, 0.40
    for _ in range(_ROUNDS):
        aa = ab = bb = ar = br = 0.0
        for wanting, log_kow, least, weight in rows:
            gained = slope * log_kow + constant
            foretold = 100 * wanting / gained
            by_constant = -foretold / gained
            by_slope, error = by_constant * log_kow, least - foretold
            aa += weight * by_slope**2
            ab += weight * by_slope * by_constant
            bb += weight * by_constant**2
            ar += weight * by_slope * error
            br += weight * by_constant * error
        determinant = aa * bb - ab * ab
        slope += (bb * ar - ab * br) / determinant
        constant += (aa * br - ab * ar) / determinant
    return Calibration(slope, constant, 0.0)


def student(level: float, freedom: int) -> float:
    """Return the two-sided quantile of Student's distribution.

    References:
        Abramowitz and Stegun 26.7.3 and 26.7.4 (from memory).

    >>> round(student(0.95, 10), 3)
    2.228
    """
    return solve(_within(freedom), level, 0.0, 1000.0)


def _within(freedom: int) -> Callable[[float], float]:
    """Return the chance to lie within plus and minus t, for so many degrees of freedom."""

    def chance(t: float) -> float:
        angle = atan(t / sqrt(freedom))
        odd = freedom % 2
        term = cos(angle) if odd else 1.0
        series = term if freedom > 1 else 0.0
        for n in range(2 + odd, freedom - 1, 2):
            term *= cos(angle) ** 2 * (n - 1) / n
            series += term
        return 2 / pi * (angle + sin(angle) * series) if odd else sin(angle) * series

    return chance
