"""What a glass delivers: mL of each, strength, sugar, oils and substances of concern.

Guarantees: a glass holds the lot's own contents in proportion. Results are floats and not rounded.
Refuses: a pour of no parts. Volumes of syrup and soda water are taken to add up, which at this
dilution they do to a few parts in a thousand (common practice, no source).
"""

from collections.abc import Mapping

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.science.contents.composition import WATER_KG_PER_M3, Contents, add, scaled
from ledger.science.contents.salts import with_acids
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3

ADULT_KG, CHILD_KG = 60, 20
"""Body weights of the examples: the adult of food-additive evaluations, and a child of about six
(common practice, no source)."""
BASE = "base syrup"
"""Stands for the simple syrup that an essence goes into."""


class Glass(Struct, frozen=True):
    """A glass poured."""

    syrup_ul: float
    """Syrup in it, in µL."""
    soda_ul: float
    """Soda water in it, in µL."""
    syrup: Contents
    """What the syrup brings."""

    @property
    def volume_ul(self) -> float:
        """The whole drink in µL."""
        return self.syrup_ul + self.soda_ul

    @property
    def mass_mg(self) -> float:
        """Mass of the drink in mg, at the least."""
        return least_mass_mg(self.syrup) + self.soda_ul * WATER_KG_PER_M3 / 1000

    @property
    def abv(self) -> float:
        """% vol of the drink at 20 °C."""
        return 100 * self.syrup.ethanol_mg / (ETHANOL_KG_PER_M3 / 1000) / self.volume_ul


def least_mass_mg(contents: Contents) -> float:
    """Return what a liquid weighs at the least, in mg, so that no share of it is told too small.

    What is not known counts as light as pure alcohol, but a base syrup as light as water: nothing
    that is poured is lighter.
    """
    unknown = (
        volume_ul * (WATER_KG_PER_M3 if lot == BASE else ETHANOL_KG_PER_M3) / 1000
        for lot, volume_ul in contents.unknown_ul.items()
    )
    return contents.mass_mg + sum(unknown)


def poured(syrup: Contents, glass_ul: float, soda_parts: int) -> Glass:
    """Return a glass of one part of a syrup to so many of soda water."""
    syrup_ul = glass_ul / (soda_parts + 1)
    return Glass(syrup_ul, glass_ul - syrup_ul, _so_much(syrup, syrup_ul))


def _so_much(syrup: Contents, volume_ul: float) -> Contents:
    """Return so much of a liquid, also when less of it is there: a glass is a matter of shares."""
    return scaled(syrup, volume_ul / syrup.volume_ul) if syrup.volume_ul > 0 else syrup


def dosed(essence: Contents, dose_ul: float, base_ul: float) -> Contents:
    """Return a syrup of which only what an essence brings is known.

    Args:
        essence: The essence.
        dose_ul: How much of it goes in, in µL.
        base_ul: How much simple syrup it goes into, in µL; its sugar is not reckoned here.
    """
    base = Contents(base_ul, unknown_ul={BASE: base_ul})
    return add(base, _so_much(essence, dose_ul))


class Concern(Struct, frozen=True):
    """A substance of concern in a glass."""

    substance: str
    """Its common name."""
    mg_per_glass: float
    """How much of it is in a glass, in mg."""
    mg_per_kg_drink: float
    """Its share of the drink in mg/kg."""
    mg_per_kg_lot: float
    """Its share of the lot in mg/kg."""
    mg_per_l_drink: float
    """Its share of the drink in mg/L."""
    mg_per_l_lot: float
    """Its share of the lot in mg/L."""


def concerns(glass: Glass, lot: Contents, materials: Mapping[str, Material]) -> tuple[Concern, ...]:
    """Return the substances of concern in a glass, by name; salts of preservatives as acid too.

    Args:
        glass: The glass.
        lot: The lot's contents.
        materials: The materials in it by code, with the constituents that are recorded of them.
    """
    in_glass = with_acids(substances(glass.syrup, materials))
    in_lot = with_acids(substances(lot, materials))
    return tuple(
        concern_of(substance, mg, in_lot.get(substance, 0.0), glass, lot)
        for substance, mg in sorted(in_glass.items())
    )


def concern_of(
    substance: str, in_glass_mg: float, in_lot_mg: float, glass: Glass, lot: Contents
) -> Concern:
    """Return how much of a substance is in a glass, from its masses in the glass and in the lot."""
    return Concern(
        substance=substance,
        mg_per_glass=in_glass_mg,
        mg_per_kg_drink=1e6 * in_glass_mg / (glass.mass_mg or 1),
        mg_per_kg_lot=1e6 * in_lot_mg / (least_mass_mg(lot) or 1),
        mg_per_l_drink=1e6 * in_glass_mg / (glass.volume_ul or 1),
        mg_per_l_lot=1e6 * in_lot_mg / (lot.volume_ul or 1),
    )


def substances(contents: Contents, materials: Mapping[str, Material]) -> dict[str, float]:
    """Return the mass in mg of each constituent that is recorded of the materials in a liquid."""
    masses: dict[str, float] = {}
    for key, part in contents.parts.items():
        material = materials.get(key.material)
        for constituent in material.constituents if material else ():
            name = constituent.substance.lower()
            masses[name] = masses.get(name, 0.0) + part.bought_mg * constituent.fraction_ppm / 1e6
    return masses
