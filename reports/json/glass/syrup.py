"""A simple syrup, for machines: figures are strings, at 20 °C where no other is said."""

from ledger.science.liquids.syrup_asked import SyrupAnswer
from ledger.science.liquids.syrups import Basis
from reports.json.kit.answer import Answer, Figure, rounded


class SyrupTold(Answer, frozen=True):
    """A syrup of sugar and water in every measure of its strength."""

    brix: Figure
    """Its strength in °Bx."""
    sugar_g_per_l: Figure
    """Sugar in a litre."""
    density_g_per_l: Figure
    """Its density."""
    specific_gravity: Figure
    """Its specific gravity, 20/20 °C."""
    basis: Basis | None
    """Whether its parts are by weight or by volume; null where it was not asked for by parts."""
    litres_per_kg_water: Figure | None
    """How much a kilogram of water makes, where it was asked for by parts."""
    bulk_g_per_ml: Figure | None
    """Bulk density taken for the sugar, where its parts are by volume."""
    read_at_c: Figure | None
    """Temperature of the hydrometer's reading that was corrected."""
    kept_at_c: Figure
    """Temperature at which it is to stay clear."""
    warning: str | None
    """A sentence when it will throw crystals there, or may."""
    source: str
    """Where the densities come from."""


def syrup_told(found: SyrupAnswer) -> SyrupTold:
    """Return a simple syrup."""
    made, bulk, read_at = found.made, found.bulk_g_per_ml, found.read_at_c
    return SyrupTold(
        brix=rounded(found.brix, 3),
        sugar_g_per_l=rounded(found.sugar_g_per_l, 1),
        density_g_per_l=rounded(found.density_g_per_l, 2),
        specific_gravity=f"{found.specific_gravity:.4f}",
        basis=made.basis if made else None,
        litres_per_kg_water=rounded(made.yield_ul_per_kg_water / 1e6, 3) if made else None,
        bulk_g_per_ml=None if bulk is None else rounded(bulk, 3),
        read_at_c=None if read_at is None else rounded(read_at, 2),
        kept_at_c=rounded(found.kept_at_c, 2),
        warning=found.warning,
        source="ICUMSA SPS-4 (1998)",
    )
