"""What a received lot contains, from its own papers and readings, or its material's.

Guarantees: a fact of the lot comes before one of its material, a measured strength before a stated
one; what was used is noted; whatever has a strength brings its alcohol, an extract as well as
spirit. Refuses: to guess a strength, or the density of what is no spirit; what lacks one is liquid
of unknown mass, named with what is missing.
"""

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.science.contents.composition import OIL, REST, WATER_KG_PER_M3, Contents, Part, PartKey
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3, density, mass_percent_from_abv

NOT_RETAINED = frozenset(
    {
        MaterialKind.CLARIFIER,
        MaterialKind.FILTER,
        MaterialKind.BOTTLE,
        MaterialKind.CLOSURE,
        MaterialKind.LABEL,
    }
)
"""Kinds of material of which nothing stays in a liquid."""


NO_WATER = frozenset({MaterialKind.OIL, MaterialKind.SUGAR})
"""Kinds of material that hold nothing but themselves beside the alcohol in them."""


class ReceivedLot(Struct, frozen=True):
    """A received lot as its papers and readings tell of it."""

    code: str
    """Its code."""
    material: str
    """Code of its material."""
    name: str
    """Its material's name."""
    sort: MaterialKind
    """What it is to the trade."""
    measure: Measure
    """In what it is counted."""
    abv: float | None = None
    """Strength in % vol at 20 °C."""
    abv_from: str = ""
    """Where the strength is from, in words."""
    density_kg_per_m3: float | None = None
    """Density in kg/m³."""
    density_from: str = ""
    """Where the density is from, in words."""


def contents_of(lot: ReceivedLot, taken: float) -> Contents:
    """Return the contents of so much of a received lot.

    Args:
        lot: The lot.
        taken: How much, in the smallest unit of its measure.
    """
    if lot.sort in NOT_RETAINED or lot.measure is Measure.UEACH:
        return Contents()
    if lot.sort is MaterialKind.ETHANOL:
        return _spirit(lot, taken)
    if lot.abv:
        return _with_oil(lot, taken) if lot.sort in NO_WATER else _extract(lot, taken)
    if lot.sort is MaterialKind.WATER:
        mass = taken if lot.measure is Measure.MG else taken * WATER_KG_PER_M3 / 1000
        return Contents(1000 * mass / WATER_KG_PER_M3, water_mg=mass)
    if lot.sort is MaterialKind.SUGAR and lot.measure is Measure.MG:
        return Contents(sucrose_mg=taken)
    return _part(lot, taken)


def missing_of(lot: ReceivedLot) -> str | None:
    """Return which fact of a lot is missing for its contents to be known, or None."""
    if lot.sort in NOT_RETAINED or lot.measure is Measure.UEACH:
        return None
    if lot.sort is MaterialKind.ETHANOL:
        return "strength" if lot.abv is None else None
    if lot.abv:
        return "density" if lot.sort in NO_WATER and lot.density_kg_per_m3 is None else None
    if lot.sort is MaterialKind.WATER or lot.measure is Measure.MG:
        return None
    return "density" if lot.density_kg_per_m3 is None else None


def holds_alcohol(lot: ReceivedLot) -> bool:
    """Return whether something of a lot is alcohol, or would be if its strength were known."""
    if lot.sort in NOT_RETAINED or lot.measure is Measure.UEACH:
        return False
    return lot.sort is MaterialKind.ETHANOL or bool(lot.abv)


def _spirit(lot: ReceivedLot, taken: float) -> Contents:
    if lot.abv is None:
        return _unknown(lot, taken)
    kg_per_m3 = density(mass_percent_from_abv(lot.abv))
    mass = taken if lot.measure is Measure.MG else taken * kg_per_m3 / 1000
    volume = 1000 * mass / kg_per_m3
    ethanol = _pure_ul(lot, volume) * ETHANOL_KG_PER_M3 / 1000
    return Contents(volume, ethanol, mass - ethanol, notes=frozenset({f"{_strength_note(lot)}."}))


def _pure_ul(lot: ReceivedLot, volume_ul: float) -> float:
    return volume_ul * (lot.abv or 0.0) / 100


def _strength_note(lot: ReceivedLot) -> str:
    return f"{lot.code}, {lot.name}: {lot.abv or 0.0:.2f} % vol, {lot.abv_from}"


def _extract(lot: ReceivedLot, taken: float) -> Contents:
    """Return a tincture, an extract or another thing bought in alcohol and water.

    It is taken for spirit of its strength; what it weighs beyond that is dissolved in it.
    """
    kg_per_m3 = lot.density_kg_per_m3 or density(mass_percent_from_abv(lot.abv or 0.0))
    mass = taken if lot.measure is Measure.MG else taken * kg_per_m3 / 1000
    volume = 1000 * mass / kg_per_m3
    spirit = _spirit(replace(lot, measure=Measure.UL), volume)
    # Where it weighs less than such spirit, it holds less water: its strength is what is known.
    water = min(spirit.water_mg, max(0.0, mass - spirit.ethanol_mg))
    solvent = spirit.ethanol_mg + water
    part = Part(max(0.0, mass - solvent), 0.0, solvent)
    rest = (
        "what it weighs beyond spirit of that strength is taken to be dissolved in it"
        if lot.density_kg_per_m3
        else "no density known, so it is taken for spirit of that strength"
    )
    return Contents(
        volume,
        spirit.ethanol_mg,
        water,
        parts={PartKey(REST, lot.material): part},
        notes=frozenset({f"{_strength_note(lot)}; {rest}."}),
    )


def _with_oil(lot: ReceivedLot, taken: float) -> Contents:
    """Return an oil or a sugar with alcohol in it and no water."""
    if lot.density_kg_per_m3 is None:
        if lot.measure is Measure.MG:
            # By weight alone its alcohol cannot be told; it is named with no volume that is
            # unknown.
            return replace(_part(lot, taken), unknown_ul={lot.code: 0.0})
        pure = _pure_ul(lot, taken)
        rest = Contents(taken, unknown_ul={lot.code: taken - pure})
        return replace(rest, ethanol_mg=pure * ETHANOL_KG_PER_M3 / 1000)
    mass = taken if lot.measure is Measure.MG else taken * lot.density_kg_per_m3 / 1000
    volume = 1000 * mass / lot.density_kg_per_m3
    pure = _pure_ul(lot, volume)
    ethanol = min(mass, pure * ETHANOL_KG_PER_M3 / 1000)
    notes = frozenset({_density_note(lot), f"{_strength_note(lot)}."})
    if lot.sort is MaterialKind.SUGAR:
        return Contents(volume, ethanol, sucrose_mg=mass - ethanol, notes=notes)
    part = Part(mass - ethanol, volume - pure, ethanol)
    return Contents(volume, ethanol, parts={PartKey(OIL, lot.material): part}, notes=notes)


def _part(lot: ReceivedLot, taken: float) -> Contents:
    """Return an oil, a sugar by volume, or another dissolved thing."""
    kg_per_m3 = lot.density_kg_per_m3
    if lot.measure is Measure.UL and kg_per_m3 is None:
        return _unknown(lot, taken)
    mass = taken if lot.measure is Measure.MG else taken * (kg_per_m3 or 0) / 1000
    if lot.sort is MaterialKind.SUGAR:
        return Contents(sucrose_mg=mass, notes=frozenset({_density_note(lot)}))
    volume = 1000 * mass / kg_per_m3 if kg_per_m3 else 0.0
    key = PartKey(OIL if lot.sort is MaterialKind.OIL else REST, lot.material)
    return Contents(volume, parts={key: Part(mass, volume)}, notes=frozenset({_density_note(lot)}))


def _density_note(lot: ReceivedLot) -> str:
    if lot.density_kg_per_m3 is None:
        return f"{lot.code}, {lot.name}: no density known, so it is taken to fill no volume."
    return f"{lot.code}, {lot.name}: {lot.density_kg_per_m3 / 1000:.3f} g/mL, {lot.density_from}."


def _unknown(lot: ReceivedLot, taken: float) -> Contents:
    """Return liquid of which no mass is told; by weight it fills what its density says."""
    volume = taken
    if lot.measure is Measure.MG:
        volume = 1000 * taken / lot.density_kg_per_m3 if lot.density_kg_per_m3 else 0.0
    return Contents(volume, unknown_ul={lot.code: volume})
