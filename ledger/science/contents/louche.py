"""Whether a drink clouds: the oil in it against how much of it dissolves in water.

Guarantees: a forecast says how sure it is and on what it stands; constituents of one oil count
together, and so do the oils of one drink, since each dissolves less beside the others than alone.
Refuses: certainty; sugar, a little alcohol and cold all move the point, and a drink in the glass
decides.

References:
    Raoult's law for the water above an oil of several constituents: the oil stays apart when their
    shares of what water holds of each alone come to more than one (textbooks, from memory; ideal
    mixtures). Oils of one drink that part from it mix with each other, so the same holds of them.
"""

from collections.abc import Mapping, Sequence
from enum import StrEnum

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.science.ranges import significant

HYDROCARBONS, OXYGENATED = "terpene hydrocarbons", "oxygenated monoterpenes"
"""The two classes between which an oil of unknown constituents lies."""
WHOLE_PPM = 900_000
"""Share from which the constituents recorded of an oil count as the oil (common practice)."""


class Solubility(Struct, frozen=True):
    """How much of a substance dissolves in water."""

    substance: str
    """Its common name."""
    low_mg_per_l: float
    """The least value of the sources, in mg/L."""
    high_mg_per_l: float
    """The greatest value of the sources, in mg/L."""
    citation: str
    """The sources."""
    log_kow: float
    """Logarithm of its share in octanol over that in water."""
    density_g_per_ml: float
    """Its density in g/mL at 20 °C."""
    refractive_index: float
    """Its refractive index at 20 °C, sodium light."""


class Outlook(StrEnum):
    """What is to be expected of a drink."""

    CLEAR = "should stay clear"
    MAY = "may cloud"
    CLOUDS = "will cloud"


class Forecast(Struct, frozen=True):
    """What is to be expected of the oils in a drink, or one of them, and why."""

    outlook: Outlook
    """What is to be expected."""
    because: str
    """On what that stands, a whole sentence."""


def forecast(
    oil_mg_per_l: float, material: Material | None, known: Mapping[str, Solubility]
) -> Forecast:
    """Return whether so much of an oil clouds a drink.

    Args:
        oil_mg_per_l: How much of it is in the drink, in mg/L.
        material: The oil with its recorded constituents.
        known: Solubilities by substance, the two classes among them.
    """
    oil = _Oil(oil_mg_per_l, material, known)
    is_told = oil.is_whole or sum(constituent.least_share for constituent in oil.found) > 1
    words = _told(oil.found) if is_told else _by_class(oil_mg_per_l, material, known)
    return Forecast(_outlook(oil.least, oil.greatest), words)


def forecast_together(
    oils: Sequence[tuple[float, Material | None]], known: Mapping[str, Solubility]
) -> Forecast | None:
    """Return whether all oils of a drink together cloud it; None where there are not two.

    Args:
        oils: How much of each is in the drink, in mg/L, with its recorded constituents.
        known: Solubilities by substance, the two classes among them.
    """
    if len(oils) < 2:
        return None
    each = [_Oil(mg_per_l, material, known) for mg_per_l, material in oils]
    least, greatest = sum(oil.least for oil in each), sum(oil.greatest for oil in each)
    words = (
        f"{significant(sum(mg_per_l for mg_per_l, _ in oils))} mg/L of them come to "
        f"{_shares(least, greatest)} of what water holds of them together. They are taken for one "
        "oil, since what parts from a drink mixes with the others (Raoult's law for an ideal "
        "mixture, from memory)"
    )
    if not all(oil.is_whole for oil in each):
        words += (
            f"; where too little is known of constituents, the least counts {OXYGENATED} and the "
            f"most {HYDROCARBONS}"
        )
    return Forecast(_outlook(least, greatest), f"{words}. A drink in the glass decides.")


def _outlook(least: float, greatest: float) -> Outlook:
    """Return what the share of what water holds, at the least and at the most, leads to."""
    if least > 1:
        return Outlook.CLOUDS
    return Outlook.CLEAR if greatest < 1 else Outlook.MAY


class _Oil:
    """An oil in a drink: its constituents of known solubility, and what they come to."""

    def __init__(
        self, mg_per_l: float, material: Material | None, known: Mapping[str, Solubility]
    ) -> None:
        told = [
            (known[constituent.substance.lower()], constituent.fraction_ppm)
            for constituent in (material.constituents if material else ())
            if constituent.substance.lower() in known
        ]
        self.found = [_Dissolving(mg_per_l * ppm / 1e6, each) for each, ppm in told]
        self.is_whole = sum(ppm for _, ppm in told) >= WHOLE_PPM
        self.least = sum(constituent.least_share for constituent in self.found)
        self.greatest = sum(constituent.greatest_share for constituent in self.found)
        # What is not recorded counts at the least as the class that dissolves best, at the most as
        # the one that dissolves worst.
        if not self.is_whole:
            self.least = max(self.least, mg_per_l / known[OXYGENATED].high_mg_per_l)
            self.greatest = max(self.greatest, mg_per_l / known[HYDROCARBONS].low_mg_per_l)


class _Dissolving(Struct, frozen=True):
    """One constituent of an oil in a drink."""

    mg_per_l: float
    known: Solubility

    @property
    def least_share(self) -> float:
        """Which share of what water holds of it there is, by the greatest value of the sources."""
        return self.mg_per_l / self.known.high_mg_per_l

    @property
    def greatest_share(self) -> float:
        """The same, by the least value of the sources."""
        return self.mg_per_l / self.known.low_mg_per_l


def _told(dissolving: Sequence[_Dissolving]) -> str:
    """Say the constituents that fill most of what water holds, and all of them together."""
    worst = max(dissolving, key=lambda constituent: constituent.greatest_share)
    told = (
        f"{significant(worst.mg_per_l)} mg/L of {worst.known.substance}, of which water dissolves "
        f"{_range(worst.known)} mg/L ({worst.known.citation})"
    )
    if len(dissolving) == 1:
        return f"{told}."
    others = ", ".join(
        constituent.known.substance for constituent in dissolving if constituent is not worst
    )
    least = sum(constituent.least_share for constituent in dissolving)
    greatest = sum(constituent.greatest_share for constituent in dissolving)
    share = _shares(least, greatest)
    return f"{told}; with {others} it comes to {share} of what water holds of them together."


def _shares(least: float, greatest: float) -> str:
    low, high = significant(100 * least), significant(100 * greatest)
    return f"{low} %" if low == high else f"{low} to {high} %"


def _by_class(
    oil_mg_per_l: float, material: Material | None, known: Mapping[str, Solubility]
) -> str:
    least, most = known[HYDROCARBONS], known[OXYGENATED]
    is_told = material is not None and material.constituents
    why = (
        "Too little is known of its constituents"
        if is_told
        else "Its constituents are not recorded"
    )
    return (
        f"{why}: {significant(oil_mg_per_l)} mg/L of it, where water dissolves "
        f"{_range(least)} mg/L of {HYDROCARBONS} and {_range(most)} mg/L of {OXYGENATED} "
        f"({least.citation})."
    )


def _range(known: Solubility) -> str:
    low, high = significant(known.low_mg_per_l, 4), significant(known.high_mg_per_l, 4)
    return low if low == high else f"{low} to {high}"
