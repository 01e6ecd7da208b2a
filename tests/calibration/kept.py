"""What is kept of a calibration: the file that the forecast reads, and how it was judged."""

from pathlib import Path
from statistics import median
from typing import NamedTuple

from ledger.science.haze.calibration import Judged, calibrate, judge
from ledger.science.haze.strength import Calibration
from tests.calibration.statements import closings, foretold

KEPT = Path("ledger/cosolvency.toml")
"""Where the calibration is kept."""
HEAD = """\
# How much better than in water an oil dissolves in spirit, as published statements say
# (tests/reference: solubility_in_spirit.csv and the gaps measured in phases.csv). Written by
# `python -m tests.calibration`, not by hand. Cosolvency of pure ethanol = slope x log K + constant;
# `reach` is half of the 95 % band in units of the doubt of each oil. `inside` counts the statements
# in the band with their whole group of oils left out.

"""


class Reckoned(NamedTuple):
    """A calibration with how it was judged."""

    calibration: Calibration
    """What it says."""
    statements: int
    """How many statements there are."""
    judged: list[Judged]
    """Those that can be foretold, each with its group left out."""

    @property
    def inside(self) -> int:
        """How many of them lie in the band."""
        return sum(item.is_inside for item in self.judged)

    @property
    def width(self) -> float:
        """Median width of their bands, in points."""
        return median(2 * item.half for item in self.judged)


def reckoned(rows: list[dict[str, str]]) -> Reckoned:
    """Return what statements give, the measured gaps fitted with them."""
    told = foretold(rows)
    labels = {item.label for item in told}
    judged = judge([*told, *closings()])
    return Reckoned(
        calibrate([*told, *closings()]),
        len(rows),
        [item for item in judged if item.statement.label in labels],
    )


def text_of(found: Reckoned) -> str:
    """Return the file that is kept."""
    calibration = found.calibration
    return HEAD + "".join(
        f'{name} = "{value}"\n'
        for name, value in (
            ("slope", f"{calibration.slope:.4f}"),
            ("constant", f"{calibration.constant:.4f}"),
            ("reach", f"{calibration.reach:.4f}"),
            ("statements", found.statements),
            ("foretold", len(found.judged)),
            ("inside", found.inside),
            ("median-width", f"{found.width:.1f}"),
        )
    )
