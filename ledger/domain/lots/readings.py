"""A reading of a lot beside what the book reckons of it.

Guarantees: both carry their doubt, and what is within it is not called a difference.
"""

from datetime import datetime
from math import hypot

from msgspec import Struct

from ledger.domain.entries import Measurement
from ledger.domain.entries.choices import Measured

UNITS = {Measured.ABV: "% vol", Measured.BRIX: "°Bx", Measured.DENSITY: "g/mL"}
"""What is compared, with its unit."""
PLACES = {Measured.ABV: 1, Measured.BRIX: 1, Measured.DENSITY: 3}
"""Decimals in which it is told."""


class Taken(Struct, frozen=True):
    """A reading that was taken of a lot."""

    lot: str
    """Code of the lot."""
    facts: Measurement
    """The reading."""
    at: datetime
    """When it was taken."""
    number: int | None = None
    """Number of its entry, once it has one."""


class Reckoned(Struct, frozen=True):
    """A figure that was measured and what is reckoned of it, in one unit."""

    measured: float
    """What was measured, at 20 °C."""
    measured_doubt: float
    """By how much it may be off."""
    low: float
    """The least that a right instrument shows in what is reckoned to be there."""
    high: float
    """The most that it shows."""
    reckoned: float
    """What is reckoned to be there."""
    reckoned_doubt: float
    """By how much it may be off."""

    @property
    def doubt(self) -> float:
        """By how much the two may differ for their doubt alone."""
        return hypot(self.measured_doubt, self.reckoned_doubt)

    @property
    def is_apart(self) -> bool:
        """Whether they differ by more than their doubt."""
        return max(self.low - self.measured, self.measured - self.high) > self.doubt


class Reading(Struct, frozen=True):
    """A reading of a lot that was made here."""

    lot: str
    """Code of the lot."""
    what: Measured
    """What was read."""
    beside: Reckoned
    """The reading beside what is reckoned."""


def told_apart(reading: Reading) -> str:
    """Return, as a sentence, by how much a reading and the book differ."""
    told, unit, places = reading.beside, UNITS[reading.what], PLACES[reading.what]

    def said(value: float) -> str:
        return f"{value:.{places}f}"

    shows = (
        f", which an instrument may show as {said(told.low)} to {said(told.high)}"
        if said(told.low) != said(told.high)
        else ""
    )
    return (
        f"{reading.lot} was measured at {said(told.measured)} {unit}, and the book reckons "
        f"{said(told.reckoned)} {unit}{shows}; for the doubt of both they may differ by "
        f"{said(told.doubt)}."
    )
