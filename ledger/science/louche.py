"""Whether a drink clouds: the oil in it against how much of it dissolves in water.

Guarantees: a forecast says how sure it is and on what it stands. Refuses: certainty; sugar, a
little alcohol and cold all move the point, and a drink in the glass decides.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from ledger.domain.entries import Material

HYDROCARBONS, OXYGENATED = "terpene hydrocarbons", "oxygenated monoterpenes"
"""The two classes between which an oil of unknown constituents lies."""
WHOLE_PPM = 900_000
"""Share from which the constituents recorded of an oil count as the oil (common practice)."""


@dataclass(frozen=True, slots=True)
class Solubility:
    """How much of a substance dissolves in water."""

    substance: str
    """Its common name."""
    low_mg_per_l: float
    """The least value of the sources, in mg/L."""
    high_mg_per_l: float
    """The greatest value of the sources, in mg/L."""
    citation: str
    """The sources."""


class Outlook(StrEnum):
    """What is to be expected of a drink."""

    CLEAR = "should stay clear"
    MAY = "may cloud"
    CLOUDS = "will cloud"


@dataclass(frozen=True, slots=True)
class Forecast:
    """What is to be expected of one oil in a drink, and why."""

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
    listed = material.constituents if material else ()
    matches = [
        (known[item.substance.lower()], oil_mg_per_l * item.fraction_ppm / 1e6)
        for item in listed
        if item.substance.lower() in known
    ]
    over = [(s, mg) for s, mg in matches if mg > s.high_mg_per_l]
    if over:
        worst, mg = max(over, key=lambda pair: pair[1] / pair[0].high_mg_per_l)
        return Forecast(Outlook.CLOUDS, _told(mg, worst))
    shares = sum(item.fraction_ppm for item in listed if item.substance.lower() in known)
    if shares >= WHOLE_PPM:
        most, mg = max(matches, key=lambda pair: pair[1] / pair[0].low_mg_per_l)
        is_under = mg < most.low_mg_per_l
        return Forecast(Outlook.CLEAR if is_under else Outlook.MAY, _told(mg, most))
    return _by_class(oil_mg_per_l, known, is_listed=bool(listed))


def _told(mg_per_l: float, known: Solubility) -> str:
    return (
        f"{mg_per_l:.3g} mg/L of {known.substance}, of which water dissolves "
        f"{_range(known)} mg/L ({known.citation})."
    )


def _by_class(oil_mg_per_l: float, known: Mapping[str, Solubility], *, is_listed: bool) -> Forecast:
    least, most = known[HYDROCARBONS], known[OXYGENATED]
    few = "Too little is known of its constituents"
    lacking = few if is_listed else "Its constituents are not recorded"
    words = (
        f"{lacking}: {oil_mg_per_l:.3g} mg/L of it, where water dissolves "
        f"{_range(least)} mg/L of {HYDROCARBONS} and {_range(most)} mg/L of {OXYGENATED} "
        f"({least.citation})."
    )
    if oil_mg_per_l < least.low_mg_per_l:
        return Forecast(Outlook.CLEAR, words)
    return Forecast(Outlook.CLOUDS if oil_mg_per_l > most.high_mg_per_l else Outlook.MAY, words)


def _range(known: Solubility) -> str:
    low, high = known.low_mg_per_l, known.high_mg_per_l
    return f"{low:.4g}" if low == high else f"{low:.4g} to {high:.4g}"
