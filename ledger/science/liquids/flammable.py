"""The class of a flammable liquid, and the small packings that carriers know.

Guarantees: a class follows from the lower end of the flash point; every figure stands beside its
source and how it is known. Refuses: to decide: the carrier and local law do.

References:
    Regulation (EC) No 1272/2008, Annex I, 2.6 (read); 49 CFR 173.121(a) and 173.150 (read, the
    limits of packings from memory); ADR 2025, table A, special provision 144 (read; UN 1197 from
    memory), UN Model Regulations rev. 22, which list liquid extracts under UN 1197 (read).
"""

from msgspec import Struct

from ledger.science.liquids.flash import OVER_C, flash_point_c

CATEGORY_2_BELOW_C, CLASS_UP_TO_C = 23.0, 60.0
"""Flash points in °C: below the one category 2 and packing group II, up to the other category 3
and packing group III; above it no class of flammable liquids."""
NOT_CARRIED_ABV = 24.0
"""Strength in % vol up to which aqueous alcohol is not subject to ADR (special provision 144), nor
in the United States with at least half of it water (49 CFR 173.150(e)(2))."""
DEFER = "The carrier and local law decide; ask them before a bottle is sent."
"""What stands under every class."""


class Flammable(Struct, frozen=True):
    """What a liquid is as a flammable one."""

    flash_c: float
    """Flash point that was reckoned, in °C, closed cup."""
    category: int
    """Category of the GHS and of CLP: 2 or 3."""
    statement: str
    """Its hazard statement."""
    signal: str
    """Its signal word."""
    packing_group: str
    """Packing group of its carriage."""
    un_number: str
    """UN number and proper shipping name of an extract for flavouring."""
    limited_inner_l: float
    """Largest inner packing of limited quantities by ADR, in litres."""
    limited_us_l: float
    """The same in the United States, which by packing group II is less."""
    is_carried: bool
    """Whether the rules for the carriage of dangerous goods count, by its strength."""


EXTRACT = "UN 1197, EXTRACTS, LIQUID, for flavouring"
"""Number and name of liquid extracts since 2023."""


def flammable(mass_fraction: float, abv: float) -> Flammable | None:
    """Return what a liquid is as a flammable one; None where it is none by its flash point.

    Args:
        mass_fraction: Mass fraction of ethanol in its ethanol and water.
        abv: Its strength in % vol.

    >>> found = flammable(0.85, 89)
    >>> found.category, found.statement, found.packing_group
    (2, 'H225', 'II')
    """
    flash_c = flash_point_c(mass_fraction)
    if flash_c is None or flash_c - OVER_C > CLASS_UP_TO_C:
        return None
    is_second = flash_c - OVER_C < CATEGORY_2_BELOW_C
    return Flammable(
        flash_c=flash_c,
        category=2 if is_second else 3,
        statement="H225" if is_second else "H226",
        signal="Danger" if is_second else "Warning",
        packing_group="II" if is_second else "III",
        un_number=EXTRACT,
        limited_inner_l=5.0,
        limited_us_l=1.0 if is_second else 5.0,
        is_carried=abv > NOT_CARRIED_ABV,
    )
