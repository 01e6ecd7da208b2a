"""A simple syrup in words: every measure of its strength, and whether it stays clear.

Guarantees: says whether parts were weighed or measured, and the temperature of every figure.
"""

from ledger.science.liquids.syrup_asked import SyrupAnswer
from ledger.science.liquids.syrups import SimpleSyrup
from ledger.science.ranges import figure

BASIS = (
    "True of sugar and water alone (ICUMSA SPS-4), nothing lost by boiling; alcohol falsifies a "
    "reading, so take it before the essence goes in."
)


def syrup_lines(syrup: SyrupAnswer) -> tuple[str, ...]:
    """Return a syrup as lines for people."""
    lines = [_head(syrup)]
    if syrup.made:
        litres = figure(syrup.made.yield_ul_per_kg_water / 1e6, 3)
        lines.append(f"1 kg of water makes {litres} L of it.")
    lines.append(
        f"At 20 °C a litre holds {figure(syrup.sugar_g_per_l, 1)} g of sugar and weighs "
        f"{figure(syrup.density_g_per_l, 1)} g; its specific gravity is "
        f"{syrup.specific_gravity:.4f} (20/20 °C)."
    )
    if syrup.warning:
        lines.append(syrup.warning)
    if syrup.bulk_g_per_ml:
        lines.append(
            f"The loose sugar is taken to weigh {figure(syrup.bulk_g_per_ml)} g/mL; kinds range "
            "from 0.7 to 0.9. Weigh a filled measure and say it with --bulk."
        )
    return (*lines, BASIS)


def _head(syrup: SyrupAnswer) -> str:
    strength = f"{figure(syrup.brix)} °Bx"
    if syrup.made:
        return f"{_parts(syrup.made)} make syrup of {strength}."
    if syrup.read_at_c is not None:
        return f"Read with a glass hydrometer at {figure(syrup.read_at_c)} °C, it is {strength}."
    return f"It is a syrup of {strength}."


def _parts(made: SimpleSyrup) -> str:
    sugar, water = figure(made.sugar_parts, 6), figure(made.water_parts, 6)
    part = "part" if made.sugar_parts == 1 else "parts"
    return f"{sugar} {part} of sugar to {water} of water {made.basis}"
