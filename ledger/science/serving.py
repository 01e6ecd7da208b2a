"""What a glass delivers: mL of each, strength, sugar, oils, substances of concern, and limits.

Guarantees: a glass holds the lot's own contents in proportion; each limit is compared on the basis
it is stated for. Results are floats and not rounded. Refuses: a pour of no parts. Volumes of syrup
and soda water are taken to add up, which at this dilution they do to a few parts in a thousand
(common practice, no source).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from ledger.domain.entries import Limit, Material
from ledger.domain.entries.words import Bound, LimitBasis, LimitUnit
from ledger.science.alcohol import ETHANOL_KG_PER_M3
from ledger.science.composition import WATER_KG_PER_M3, Contents, add, scaled

ADULT_KG, CHILD_KG = 60, 20
"""Body weights of the examples: the adult of food-additive evaluations, and a child of about six
(common practice, no source)."""
BASE = "base syrup"
"""Stands for the simple syrup that an essence goes into."""


@dataclass(frozen=True, slots=True)
class Glass:
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
        """Mass of the drink in mg; liquid that is not known counts a gram a mL."""
        unknown = sum(self.syrup.unknown_ul.values())
        return self.syrup.mass_mg + unknown + self.soda_ul * WATER_KG_PER_M3 / 1000

    @property
    def abv(self) -> float:
        """% vol of the drink at 20 °C."""
        return 100 * self.syrup.ethanol_mg / (ETHANOL_KG_PER_M3 / 1000) / self.volume_ul


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


@dataclass(frozen=True, slots=True)
class Concern:
    """A substance of concern in a glass."""

    substance: str
    """Its common name."""
    mg_per_glass: float
    """How much of it is in a glass, in mg."""
    mg_per_kg_drink: float
    """Its share of the drink in mg/kg."""
    mg_per_kg_lot: float
    """Its share of the lot in mg/kg."""


def concerns(glass: Glass, lot: Contents, materials: Mapping[str, Material]) -> tuple[Concern, ...]:
    """Return the substances of concern in a glass, by name.

    Args:
        glass: The glass.
        lot: The lot's contents.
        materials: The materials in it by code, with the constituents that are recorded of them.
    """
    in_glass = substances(glass.syrup, materials)
    in_lot = substances(lot, materials)
    return tuple(
        Concern(
            substance,
            mg,
            1e6 * mg / (glass.mass_mg or 1),
            1e6 * in_lot.get(substance, 0.0) / (least_mass_mg(lot) or 1),
        )
        for substance, mg in sorted(in_glass.items())
    )


def least_mass_mg(contents: Contents) -> float:
    """Return the mass of a liquid in mg, what is not known in it as light as pure ethanol.

    No liquid of the trade is lighter, so that a share of it is told rather too great.
    """
    unknown = sum(contents.unknown_ul.values())
    return contents.mass_mg + unknown * ETHANOL_KG_PER_M3 / 1000


def substances(contents: Contents, materials: Mapping[str, Material]) -> dict[str, float]:
    """Return the mass in mg of each constituent that is recorded of the materials in a liquid."""
    found: dict[str, float] = {}
    for key, part in contents.parts.items():
        material = materials.get(key.material)
        for item in material.constituents if material else ():
            name = item.substance.lower()
            found[name] = found.get(name, 0.0) + part.mass_mg * item.fraction_ppm / 1e6
    return found


@dataclass(frozen=True, slots=True)
class Compared:
    """A figure beside a limit."""

    limit: Limit
    """The limit."""
    figure: float
    """What it is, in the limit's unit."""
    is_passed: bool
    """Whether the figure is on the side of the limit that is the matter."""


def is_passed(figure: float, limit: Limit) -> bool:
    """Return whether a figure is past a limit that forbids, or has reached one that marks.

    At most and less than forbid what is above (or at) the value; from and above mark it.
    """
    value = limit.value_micro / 1_000_000
    if limit.bound in (Bound.AT_MOST, Bound.ABOVE):
        return figure > value
    return figure >= value


def compared(concern: Concern, limits: Iterable[Limit]) -> tuple[Compared, ...]:
    """Return the limits of a substance with its figures, those that cannot be compared left out.

    Daily limits are among these: `daily` reckons them for bodies.
    """
    found = []
    for limit in limits:
        figure = _figure(concern, limit) if limit.substance == concern.substance else None
        if figure is not None:
            found.append(Compared(limit, figure, is_passed(figure, limit)))
    return tuple(found)


def _figure(concern: Concern, limit: Limit) -> float | None:
    """Return a concern in a limit's unit; mg/L is read as mg/kg of drinks near water's density."""
    if limit.basis is LimitBasis.PER_DAY:
        return None
    drink = limit.basis is LimitBasis.IN_DRINK
    mg_per_kg = concern.mg_per_kg_drink if drink else concern.mg_per_kg_lot
    if limit.unit in (LimitUnit.MG_PER_KG, LimitUnit.MG_PER_L):
        return mg_per_kg
    return mg_per_kg / 10_000 if limit.unit is LimitUnit.PERCENT_MASS else None


@dataclass(frozen=True, slots=True)
class Daily:
    """A daily ceiling for somebody."""

    limit: Limit
    """The limit, in mg for each kg of body weight."""
    who: str
    """For whom: an adult, a child."""
    body_kg: int
    """Body weight in kg."""
    ceiling_mg: float
    """The most a day, in mg."""
    glasses: float
    """How many glasses that is."""

    @property
    def is_passed(self) -> bool:
        """Whether one glass is more than a day's ceiling."""
        return self.glasses < 1


def daily(
    concern: Concern, limits: Iterable[Limit], bodies: Sequence[tuple[str, int]]
) -> tuple[Daily, ...]:
    """Return the daily ceilings of a substance for bodies of so many kg."""
    return tuple(
        Daily(limit, who, kg, ceiling, ceiling / concern.mg_per_glass)
        for limit in limits
        if limit.substance == concern.substance
        and limit.basis is LimitBasis.PER_DAY
        and limit.unit is LimitUnit.MG_PER_KG_BODY
        and concern.mg_per_glass > 0
        for who, kg in bodies
        for ceiling in (limit.value_micro / 1_000_000 * kg,)
    )


def strength_markers(
    lot_abv: float, glass_abv: float | None, limits: Iterable[Limit]
) -> tuple[Compared, ...]:
    """Return the limits and markers of alcohol with the strength they look at."""
    found = []
    for limit in limits:
        if limit.substance != "alcohol" or limit.unit is not LimitUnit.PERCENT_VOL:
            continue
        figure = glass_abv if limit.basis is LimitBasis.IN_DRINK else lot_abv
        if figure is not None:
            found.append(Compared(limit, figure, is_passed(figure, limit)))
    return tuple(found)
