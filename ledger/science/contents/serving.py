"""What a glass delivers: mL of each, strength, sugar, oils, substances of concern, and limits.

Guarantees: a glass holds the lot's own contents in proportion; each limit is compared on the basis
it is stated for. Results are floats and not rounded. Refuses: a pour of no parts. Volumes of syrup
and soda water are taken to add up, which at this dilution they do to a few parts in a thousand
(common practice, no source).
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from ledger.domain.entries import Limit, Material
from ledger.domain.entries.choices import LimitBasis, LimitUnit
from ledger.domain.masters.limits import is_passed
from ledger.science.contents.composition import WATER_KG_PER_M3, Contents, add, scaled
from ledger.science.contents.salts import with_acids
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3

ADULT_KG, CHILD_KG = 60, 20
"""Body weights of the examples: the adult of food-additive evaluations, and a child of about six
(common practice, no source)."""
BASE = "base syrup"
"""Stands for the simple syrup that an essence goes into."""
ALCOHOL, SUGAR = "alcohol", "sugar"
"""What limits and markers call the ethanol and the sucrose of a liquid."""


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
        _concern(substance, mg, in_lot.get(substance, 0.0), glass, lot)
        for substance, mg in sorted(in_glass.items())
    )


def _concern(
    substance: str, in_glass_mg: float, in_lot_mg: float, glass: Glass, lot: Contents
) -> Concern:
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


class Compared(Struct, frozen=True):
    """A figure beside a limit."""

    limit: Limit
    """The limit."""
    figure: float
    """What it is, in the limit's unit."""
    is_passed: bool
    """Whether the figure is on the side of the limit that is the matter."""


def compared(concern: Concern, limits: Iterable[Limit]) -> tuple[Compared, ...]:
    """Return the limits of a substance as served and as sold, with its figures.

    Those that cannot be compared are left out; daily ones are for `daily`.
    """
    beside_limits = []
    for limit in limits:
        # By the substance that the limit names: one for a salt looks at that salt, one for an acid
        # at the acid with what its salts count as.
        figure = _figure(concern, limit) if limit.substance == concern.substance else None
        if figure is not None:
            beside_limits.append(Compared(limit, figure, is_passed(figure, limit)))
    return tuple(beside_limits)


def _figure(concern: Concern, limit: Limit) -> float | None:
    """Return a concern in a limit's unit and on its basis; None where it has no such figure."""
    if limit.basis is LimitBasis.PER_DAY:
        return None
    drink = limit.basis is LimitBasis.IN_DRINK
    mg_per_kg = concern.mg_per_kg_drink if drink else concern.mg_per_kg_lot
    mg_per_l = concern.mg_per_l_drink if drink else concern.mg_per_l_lot
    match limit.unit:
        case LimitUnit.MG_PER_KG:
            return mg_per_kg
        case LimitUnit.PERCENT_MASS:
            return mg_per_kg / 10_000
        case LimitUnit.MG_PER_L:
            return mg_per_l
        case LimitUnit.G_PER_100ML:
            return mg_per_l / 10_000
        case LimitUnit.PERCENT_VOL if concern.substance == ALCOHOL:
            # mg over the g that a litre of pure ethanol weighs, in per cent.
            return mg_per_l / 10 / ETHANOL_KG_PER_M3
        case _:
            return None


class Daily(Struct, frozen=True):
    """A daily ceiling for somebody."""

    limit: Limit
    """The limit, in mg for each kg of body weight."""
    who: str
    """For whom: an adult, a child."""
    body_kg: int
    """Body weight in kg."""
    ceiling_mg: float
    """The most a day, in mg."""
    percent: float | None
    """How much of it a glass takes, in per cent; None where nothing at all is allowed."""

    @property
    def is_passed(self) -> bool:
        """Whether one glass is more than a day's ceiling."""
        return self.percent is None or self.percent > 100


def daily(
    concern: Concern, limits: Iterable[Limit], bodies: Sequence[tuple[str, int]]
) -> tuple[Daily, ...]:
    """Return the daily ceilings of a substance for bodies of so many kg; none where none is in."""
    return tuple(
        _daily(concern, limit, who, kg)
        for limit in limits
        if limit.substance == concern.substance
        and limit.basis is LimitBasis.PER_DAY
        and limit.unit is LimitUnit.MG_PER_KG_BODY
        and concern.mg_per_glass > 0
        for who, kg in bodies
    )


def _daily(concern: Concern, limit: Limit, who: str, body_kg: int) -> Daily:
    ceiling_mg = limit.value_micro / 1_000_000 * body_kg
    percent = 100 * concern.mg_per_glass / ceiling_mg if ceiling_mg else None
    return Daily(limit, who, body_kg, ceiling_mg, percent)


def markers(syrup: Contents, glass: Glass, limits: Iterable[Limit]) -> tuple[Compared, ...]:
    """Return the limits and markers of alcohol and of sugar with the figures they look at.

    Those of sugar are left out where a syrup is told only by what an essence brings into it.

    Args:
        syrup: The syrup that is poured, or sold.
        glass: A glass of it.
        limits: The limits.
    """
    held = [(ALCOHOL, glass.syrup.ethanol_mg, syrup.ethanol_mg)]
    if BASE not in syrup.unknown_ul:
        held.append((SUGAR, glass.syrup.sucrose_mg, syrup.sucrose_mg))
    told = tuple(limits)
    return tuple(
        item
        for substance, in_glass_mg, in_syrup_mg in held
        for item in compared(_concern(substance, in_glass_mg, in_syrup_mg, glass, syrup), told)
    )
