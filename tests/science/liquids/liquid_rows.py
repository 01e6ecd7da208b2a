"""Received lots for the tests of what liquids contain; all of them invented."""

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.science.contents.composition import Contents, add
from ledger.science.contents.received import ReceivedLot, contents_of

ML = 1000.0
"""µL in a mL, and mg in a g."""


def spirit(abv: float | None = 95.0, measure: Measure = Measure.UL) -> ReceivedLot:
    return ReceivedLot(
        "SP-1", "spirit", "Spirit", MaterialKind.ETHANOL, measure, abv, "by its papers"
    )


def oil(
    code: str = "lemon-oil", density: float | None = 0.853, measure: Measure = Measure.UL
) -> ReceivedLot:
    return ReceivedLot(
        "OI-1",
        code,
        code.capitalize(),
        MaterialKind.OIL,
        measure,
        density_kg_per_m3=None if density is None else 1000 * density,
        density_from="by its papers",
    )


SUGAR = ReceivedLot("SU-1", "sugar", "Sugar", MaterialKind.SUGAR, Measure.MG)
WATER = ReceivedLot("WA-1", "water", "Water", MaterialKind.WATER, Measure.UL)
ACID = ReceivedLot("AC-1", "citric", "Citric acid", MaterialKind.ACID, Measure.MG)
CARBONATE = ReceivedLot("CA-1", "carb", "Carbonate", MaterialKind.CLARIFIER, Measure.MG)


def some(lot: ReceivedLot, amount: float) -> Contents:
    """Return the contents of an amount of a lot, as a liquid of its own volume."""
    return add(Contents(), contents_of(lot, amount))


def total(*liquids: Contents) -> Contents:
    """Return the mixture of liquids, poured together in their order."""
    whole = Contents()
    for liquid in liquids:
        whole = add(whole, liquid)
    return whole


def masses(liquid: Contents) -> dict[str, float]:
    """Return every mass in a liquid, by name."""
    found = {"ethanol": liquid.ethanol_mg, "water": liquid.water_mg, "sucrose": liquid.sucrose_mg}
    return found | {key.material: part.mass_mg for key, part in liquid.parts.items()}


def oil_percent(liquid: Contents, code: str) -> float:
    """Return an oil in % by volume."""
    return 100 * liquid.oils()[code].volume_ul / liquid.volume_ul
