"""What was foretold of a lot before anybody looked.

Guarantees: figures as they were told, so that a look can be held against them later; nothing that
follows from entries is taken from here. Refuses: to change; a new forecast is a new entry.
"""

from enum import StrEnum
from typing import ClassVar

from ledger.domain.entries.choices import LookedAt
from ledger.domain.entries.spine import Facts


class Carried(StrEnum):
    """Whether the spirit at hand carries the oil."""

    YES = "yes"
    EDGE = "edge"
    NO = "no"


class Foretold(Facts, frozen=True):
    """How a lot will look was foretold."""

    KIND: ClassVar[str] = "forecast"

    oils: str
    """The kinds of oil in it."""
    carried: Carried | None = None
    """Whether its spirit carries the oil."""
    spirit_mpct: int | None = None
    """Strength of its spirit without the oil, in thousandths of a per cent by volume."""
    clear_low_mpct: int | None = None
    """The least strength that carries it clear, at the least."""
    clear_likely_mpct: int | None = None
    """The same, most likely."""
    clear_high_mpct: int | None = None
    """The same, at the most."""
    neat_low_milli: int | None = None
    """Turbidity of it neat in thousandths of an NTU, at the least."""
    neat_high_milli: int | None = None
    """The same at the most."""
    syrup_low_milli: int | None = None
    """Turbidity in syrup, at the least."""
    syrup_high_milli: int | None = None
    """The same at the most."""
    glass_low_milli: int | None = None
    """Turbidity as poured, at the least."""
    glass_high_milli: int | None = None
    """The same at the most."""
    dose_ul: int | None = None
    """The most of it in a litre of syrup that leaves a glass bright, in µL."""
    own_readings: int | None = None
    """How many of the maker's own readings narrow the bands."""
    own_least_micro: int | None = None
    """The least that these were of the middle foretold, in millionths."""
    own_most_micro: int | None = None
    """The most."""

    def band(self, looked_at: LookedAt) -> tuple[float, float] | None:
        """Return the band in NTU of what is looked at, narrowed; None where none was foretold."""
        low, high = self._ends(looked_at)
        if low is None or high is None:
            return None
        if self.own_least_micro is None or self.own_most_micro is None:
            return low / 1000, high / 1000
        return narrowed_band(
            low / 1000, high / 1000, self.own_least_micro / 1e6, self.own_most_micro / 1e6
        )

    def _ends(self, looked_at: LookedAt) -> tuple[int | None, int | None]:
        return {
            LookedAt.NEAT: (self.neat_low_milli, self.neat_high_milli),
            LookedAt.IN_SYRUP: (self.syrup_low_milli, self.syrup_high_milli),
            LookedAt.AS_POURED: (self.glass_low_milli, self.glass_high_milli),
        }[looked_at]

    def middle(self, looked_at: LookedAt) -> float | None:
        """Return the middle in NTU of what is looked at, before it was narrowed.

        None where none was foretold, or where the band begins at nought.
        """
        low, high = self._ends(looked_at)
        return (low * high) ** 0.5 / 1000 if low and high else None


def narrowed_band(low: float, high: float, least: float, most: float) -> tuple[float, float]:
    """Return a band as own readings narrow it; one that begins at nought stays as it is.

    >>> narrowed_band(4.0, 400.0, 0.5, 2.0), narrowed_band(0.0, 3.0, 0.5, 2.0)
    ((20.0, 80.0), (0.0, 3.0))
    """
    if not low:
        return low, high
    middle = float((low * high) ** 0.5)
    return middle * least, middle * most
