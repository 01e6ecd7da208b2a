"""A strength of spirit in words: every measure of it, and what an amount holds.

Guarantees: every volume says its temperature, every gravity whether air bears part of it.
"""

from ledger.domain.amounts.quantity import tidy
from ledger.science.liquids.strength_asked import AmountAnswer, StrengthAnswer
from ledger.science.ranges import figure
from reports.words.glass.dilute import proof_words

BASIS = (
    "By OIML R 22, true of ethanol and water alone: sugar or oil falsifies a reading. A proof "
    "gallon is a US gallon of 100 proof at 60 °F (27 CFR 19.1)."
)
DEFER = "How spirit is measured for duty, and rounded, local law says."
"""What stands under every answer."""


def strength_lines(found: StrengthAnswer) -> tuple[str, ...]:
    """Return a strength as lines for people."""
    return (
        f"{figure(found.abv, 3)} % vol at 20 °C is {figure(found.mass_percent)} % w/w, "
        f"{figure(found.ethanol_g_per_l, 1)} g of ethanol in a litre, and "
        f"{proof_words(found.abv)} US proof at 60 °F.",
        f"A litre weighs {figure(found.density_g_per_l, 1)} g at 20 °C; specific gravity 20/20 °C: "
        f"{found.gravity:.4f} in vacuum, {found.gravity_in_air:.4f} in air.",
        *(_amount_lines(found.amount) if found.amount else ()),
        BASIS,
        DEFER,
    )


def _amount_lines(of: AmountAnswer) -> tuple[str, ...]:
    measured = "" if of.temp_c is None else f" measured at {figure(of.temp_c, 1)} °C"
    return (
        f"{tidy(of.written)}{measured}: {_litres(of.volume_ul)} at 20 °C, "
        f"{figure(of.scale_mg / 1e6, 4)} kg on a scale in air.",
        f"In it {_litres(of.pure_alcohol_ul)} of pure alcohol at 20 °C; US proof "
        f"gallons: {figure(of.proof_gallons, 4)}.",
    )


def _litres(volume_ul: float) -> str:
    return f"{figure(volume_ul / 1e6, 4)} L"
