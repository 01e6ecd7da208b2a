"""The net volume of a bottle: in the units of its country, its figures as high as the law asks.

Guarantees: no more is promised than is there.
"""

from math import cbrt, pi

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import House
from ledger.domain.masters.allergens import Place
from reports.kit.format import tidy


def is_us(house: House | None) -> bool:
    """Say whether a house is in the United States."""
    return house is not None and (house.country or "").upper() == Place.US.upper()


def is_canadian(house: House | None) -> bool:
    """Say whether a house is in Canada."""
    return house is not None and (house.country or "").upper() == "CA"


def net_volume(size: Quantity, house: House | None) -> str:
    """Return the net volume of a bottle; in both units where the house is in the United States.

    Fluid ounces are rounded down, so that no more is promised than is there.

    References:
        21 CFR 101.7(a) and (b): US fluid ounces, and the metric measure beside them (from memory).
    """
    told = tidy(size.written)
    if not is_us(house) or "oz" in told:
        return told
    ounces = int(size.amount * 10 / US_FLUID_OUNCE_UL) / 10
    return f"{ounces:g} fl oz ({told})"


US_FLUID_OUNCE_UL = 29_573.5295625
"""A US fluid ounce in µL (NIST Handbook 44, Appendix C; 231 cubic inches in 128 of them)."""
FIGURES = ((50_000, 2.0), (200_000, 3.0), (1_000_000, 4.0))
"""Least height of the figures of a volume in mm, up to so many µL (Directive 76/211/EEC, Annex I,
3.1; label_law.csv)."""
LARGEST_FIGURES = 6.0
"""The same above."""


SLIM = 4
"""Heights of the slimmest bottle over its width (common practice, no source)."""
US_PANEL = 0.4
"""Share of the side of a round bottle that is its principal display panel (21 CFR 101.1(b);
label_law.csv)."""


def panel_sq_in(volume_ul: int) -> float:
    """Return how large the panel of a round bottle may be at most, in square inches.

    Of radius r the slimmest bottle holds 2 pi SLIM r³, and its side has 4 pi SLIM r².

    >>> [round(panel_sq_in(ml * 1000), 1) for ml in (30, 250, 1000)]
    [3.5, 14.4, 36.3]
    """
    radius_in = cbrt(volume_ul / 1000 / (2 * pi * SLIM)) / 2.54
    return US_PANEL * 4 * pi * SLIM * radius_in**2


def figures_mm(volume_ul: int) -> float:
    """Return the least height in mm of the figures of a net volume.

    >>> [figures_mm(ml * 1000) for ml in (30, 100, 250, 1000, 5000)]
    [2.0, 3.0, 4.0, 4.0, 6.0]
    """
    return next((height for most, height in FIGURES if volume_ul <= most), LARGEST_FIGURES)
