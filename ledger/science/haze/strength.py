"""The least strength of spirit at which an oil is clear, as a band.

Guarantees: solubility rises with the share of ethanol by the log-linear law of cosolvency, whose
slope is calibrated on published statements; a strength is told with the band in which statements of
oils that were left out of the calibration lay. Refuses: an oil of which less than half is known.

References:
    S. H. Yalkowsky, log-linear cosolvency: log S rises in a straight line with the share of the
    cosolvent by volume, with a slope that grows with log K of octanol against water (pharmaceutical
    literature, from memory).
    That the logarithms of an oil's constituents are taken together by their shares is what the
    statements ask for: in spirit an oil is some per cent to half of the liquid, and what dissolves
    well keeps in solution what dissolves badly (calibrated). In water, where it is some parts in a
    million, each dissolves for itself (Raoult's law, `ledger.science.contents.louche`).
"""

from collections.abc import Iterable, Mapping, Sequence
from math import log10, sqrt
from typing import NamedTuple

from msgspec import Struct

from ledger.science.contents.louche import HYDROCARBONS, OXYGENATED, Solubility

CROWDED = 0.25
"""Power of the oil's share of the liquid by which it asks less strength as it is thinned. By the
ideal law it were 1; from 0.1 to 0.3 the statements left out are met about alike, and worse by more
(tried on the statements, not fitted)."""
LEAST_KNOWN = 0.5
"""Share of an oil that must be known for its strength to be foretold (common practice)."""
STEP_PERCENT = 10.0
"""Steps in which statements tell a strength: 60, 70, 80, 90 % vol."""
STRONGEST = 100.0
"""Strength of pure ethanol."""


class Share(NamedTuple):
    """A constituent of an oil, by how much of the oil it is."""

    solute: Solubility
    """What dissolves how well."""
    low: float
    """At the least, from 0 to 1."""
    high: float
    """At the most."""

    @property
    def middle(self) -> float:
        """The middle of its range."""
        return (self.low + self.high) / 2


class Oil(Struct, frozen=True):
    """What an oil is made of, as far as that is known."""

    shares: tuple[Share, ...]
    """Its constituents of known solubility."""
    best: Solubility
    """What that of which nothing is known dissolves as, at the best."""
    worst: Solubility
    """And at the worst."""

    @property
    def known(self) -> float:
        """Which share of it is known, from 0 to 1."""
        return min(1.0, sum(share.middle for share in self.shares))


class Calibration(Struct, frozen=True):
    """What the published statements say of cosolvency by ethanol."""

    slope: float
    """How much the cosolvency of pure ethanol grows with a unit of log K."""
    constant: float
    """What it is at a log K of nought."""
    reach: float
    """Half of the band, in units of the doubt of each oil."""


class Band(NamedTuple):
    """A strength in % vol, with the band in which it lies."""

    low: float
    """The least that it may be."""
    likely: float
    """What it is, most likely."""
    high: float
    """The most; above it the oil is clear."""


def oil_of(shares: Iterable[Share], known: Mapping[str, Solubility]) -> Oil:
    """Return an oil of these constituents; the rest lies between the two classes."""
    return Oil(tuple(shares), known[OXYGENATED], known[HYDROCARBONS])


def least_strength(oil: Oil, oil_share: float, calibration: Calibration) -> Band | None:
    """Return the strength from which spirit carries an oil clear; None where too little is known.

    Args:
        oil: The oil.
        oil_share: Which share of oil and spirit together the oil is by volume, from 0 to 1.
        calibration: What statements say.
    """
    if oil.known < LEAST_KNOWN or not 0 < oil_share <= 1:
        return None
    likely = middle(oil, oil_share, calibration)
    half = calibration.reach * doubt(oil, oil_share, calibration)
    return Band(*(min(max(end, 0.0), STRONGEST) for end in (likely - half, likely, likely + half)))


def middle(oil: Oil, oil_share: float, calibration: Calibration) -> float:
    """Return the strength at the middle of all ranges, which may lie beyond 0 and 100."""
    wanting, log_kow = thirst(oil, oil_share)
    return 100 * wanting / (calibration.slope * log_kow + calibration.constant)


def thirst(oil: Oil, oil_share: float) -> tuple[float, float]:
    """Return what an oil wants of its spirit, and its log K, at the middle of all ranges.

    Args:
        oil: The oil.
        oil_share: Which share of oil and spirit together the oil is by volume, from 0 to 1.

    Returns:
        By how many powers of ten its solubility must rise above that in water, and its log K.
    """
    parts = [(share.middle, share.solute, _log_middle(share.solute)) for share in oil.shares]
    return _thirst(parts, oil_share)


def doubt(oil: Oil, oil_share: float, calibration: Calibration) -> float:
    """Return how well the strength of an oil is known, as a standard deviation in points.

    Half the step in which statements are told, and the spread of what is published of the oil, as
    if every value in its range were as likely as any other.
    """
    worst = _strength(_extreme(oil, oil_share, calibration, is_worst=True), oil_share, calibration)
    best = _strength(_extreme(oil, oil_share, calibration, is_worst=False), oil_share, calibration)
    return sqrt((STEP_PERCENT / 2) ** 2 + (worst - best) ** 2 / 12)


_Part = tuple[float, Solubility, float]
"""A share, what it is of, and the logarithm of its solubility in water."""


def _extreme(
    oil: Oil, oil_share: float, calibration: Calibration, *, is_worst: bool
) -> list[_Part]:
    """Return an oil as it asks for most strength, or for least, within what is known of it."""
    parts: list[_Part] = []
    middle_of_all = middle(oil, oil_share, calibration)
    for share in oil.shares:
        solute = share.solute
        log_water = log10(solute.low_mg_per_l if is_worst else solute.high_mg_per_l)
        asks = _strength([(1.0, solute, log_water)], oil_share, calibration)
        is_much = (asks > middle_of_all) == is_worst
        parts.append((share.high if is_much else share.low, solute, log_water))
    rest = max(0.0, 1 - sum(part[0] for part in parts))
    unknown = oil.worst if is_worst else oil.best
    log_unknown = log10(unknown.low_mg_per_l if is_worst else unknown.high_mg_per_l)
    return [*parts, (rest, unknown, log_unknown)]


def _log_middle(solute: Solubility) -> float:
    return (log10(solute.low_mg_per_l) + log10(solute.high_mg_per_l)) / 2


def _strength(parts: Sequence[_Part], oil_share: float, calibration: Calibration) -> float:
    """Return the strength at which parts dissolve that are so much of oil and spirit together."""
    wanting, log_kow = _thirst(parts, oil_share)
    return 100 * wanting / (calibration.slope * log_kow + calibration.constant)


def _thirst(parts: Sequence[_Part], oil_share: float) -> tuple[float, float]:
    whole = sum(share for share, _, _ in parts)
    thinned = CROWDED * log10(oil_share)
    wanting = sum(
        share * (log10(1e6 * solute.density_g_per_ml) + thinned - log_water)
        for share, solute, log_water in parts
    )
    return wanting / whole, sum(share * solute.log_kow for share, solute, _ in parts) / whole
