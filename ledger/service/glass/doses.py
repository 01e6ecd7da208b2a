"""How much of an essence flavours how much syrup: as it is asked, as its formula says, or as usual.

Guarantees: what is asked comes first, then what the formula says, then the usual; whatever tells a
dose asks here. Refuses: a dose that is no volume, or none at all.
"""

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, parse_quantity, tidy
from ledger.domain.entries import Formula
from ledger.errors import InputError

DOSE_UL = 30_000
"""What of an essence flavours a syrup (common practice, no source)."""
# A US gallon is 231 cubic inches.
DOSED_INTO = (("1 L", 1_000_000), ("1 US gal", 3_785_412))
"""The syrups that an essence is dosed into in the trade (common practice, no source)."""


class Dose(Struct, frozen=True):
    """How much of an essence goes into how much simple syrup."""

    said: str
    """How much, in words."""
    dose_ul: int
    """How much, in µL."""
    into: tuple[tuple[str, int], ...]
    """The syrups it may go into, each in words and in µL; one where a formula says."""


USUAL = Dose("30 mL", DOSE_UL, DOSED_INTO)
"""The dose where nobody says another."""


def dose_of(formula: Formula | None, asked: tuple[str, int] | None = None) -> Dose:
    """Return the dose of an essence.

    Args:
        formula: The formula it was made by, if any.
        asked: How much is asked for, in words and in µL; None: as the formula says.
    """
    if formula and formula.dose and formula.dose_into:
        into = ((tidy(formula.dose_into.written), formula.dose_into.amount),)
        usual = Dose(tidy(formula.dose.written), formula.dose.amount, into)
    else:
        usual = USUAL
    return Dose(*asked, usual.into) if asked else usual


def read_dose(text: str | None, fluid_ounce: str) -> tuple[str, int] | None:
    """Return a dose as a person writes it, in words and in µL; None when none is written.

    Raises:
        InputError: It is no volume.
    """
    if not text:
        return None
    amount = parse_quantity(text, fluid_ounce=fluid_ounce)
    if amount.measure is not Measure.UL:
        raise InputError(f'"{text}" is not a dose of essence.', "Write a volume, such as 30mL.")
    return tidy(amount.written), amount.amount
