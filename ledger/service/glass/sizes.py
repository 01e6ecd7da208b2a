"""The glass that a lot is poured into, as it is asked for or as is usual.

Guarantees: what is said of the glass comes first, then what the batch says, then the usual.
Refuses: a size of a glass that is no volume.
"""

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import House, Start
from ledger.domain.entries.choices import ProductKind
from ledger.errors import InputError

GLASS_UL = 240_000
"""A glass, unless another is named: 30 mL of syrup and 210 mL of soda (common practice, no source).
"""
POURED = frozenset({ProductKind.SYRUP, ProductKind.BASE_SYRUP})
"""Kinds of product that are poured into a glass as they are."""
SODA_PARTS = 7
"""Parts of soda water to one of syrup, unless the batch says otherwise (common practice,
no source)."""


def soda_parts(told: int | None, start: Start | None) -> int:
    """Return the parts of soda water to one: as told, else as the batch says, else the usual."""
    return told or (start.pour_parts if start else None) or SODA_PARTS


def ounce_of(house: House | None) -> str:
    """Return whose fluid ounce counts in a house."""
    return house.fluid_ounce if house else "US"


def read_glass(text: str | None, fluid_ounce: str = "US") -> int:
    """Return the volume of a glass in microlitres; the usual one when none is named.

    Args:
        text: What was written.
        fluid_ounce: Whose fluid ounce the house has.

    Raises:
        InputError: It is no volume.
    """
    if not text:
        return GLASS_UL
    amount = parse_quantity(text, fluid_ounce=fluid_ounce)
    if amount.measure is not Measure.UL:
        raise InputError(f'"{text}" is not the size of a glass.', "Write a volume, such as 240mL.")
    return amount.amount
