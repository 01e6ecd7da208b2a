"""What a temperature does to a forecast: its sign, where that is known.

Guarantees: a temperature beyond what is published is named as a gap. Refuses: to reckon how much
nearer the cold brings a cloud, which nobody has published for these oils.
"""

from ledger.domain.rules.figures import degrees
from ledger.science.liquids.strengths import parse_temperature

TEMP_MDEGC = 20_000
"""The temperature that the figures are of."""
NEAR_MDEGC = 5_000
"""So far from it nothing is said (common practice, no source)."""
COLDEST_MDEGC, WARMEST_MDEGC = -5_000, 40_000
"""Temperatures within which at least the sign is known (common practice, no source)."""


def read_warmth(text: str | None) -> int:
    """Return a temperature in thousandths of a degree Celsius; the usual where none is written.

    Raises:
        InputError: It is no temperature.
    """
    return round(1000 * parse_temperature(text)) if text else TEMP_MDEGC


def at_temp(temp_mdegc: int) -> tuple[list[tuple[str, str]], list[str]]:
    """Return what is missing at a temperature, and what it is known to do."""
    told = degrees(temp_mdegc)
    if not COLDEST_MDEGC <= temp_mdegc <= WARMEST_MDEGC:
        what = f"Nothing published reaches {told}: the figures are of {degrees(TEMP_MDEGC)}."
        return [(what, f"Look at it at {degrees(TEMP_MDEGC)}.")], []
    if abs(temp_mdegc - TEMP_MDEGC) <= NEAR_MDEGC:
        return [], []
    how = "less oil stays in than" if temp_mdegc < TEMP_MDEGC else "more oil stays in than"
    return [], [f"Temperature: at {told} {how} at {degrees(TEMP_MDEGC)}, nobody says how much."]
