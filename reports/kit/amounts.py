"""Amounts for machines and spreadsheets: a plain decimal and its unit, apart.

Guarantees: no exponent, no idle zeros, and exactly what the book holds.
"""

from typing import Literal

from ledger.domain.amounts.quantity import Measure

Unit = Literal["mL", "g", "each"]
"""The units that amounts are told in."""
UNITS: dict[Measure, Unit] = {Measure.UL: "mL", Measure.MG: "g", Measure.UEACH: "each"}
"""The unit amounts are told in, by measure."""
# Things are counted in millionths, the rest in thousandths of what is told.
_PLACES = {Measure.UL: 3, Measure.MG: 3, Measure.UEACH: 6}


def amount_in(amount: int, measure: Measure) -> str:
    """Return an amount as a plain decimal in the unit of its measure.

    >>> amount_in(30_769, Measure.UL), amount_in(6_000_000, Measure.UEACH)
    ('30.769', '6')
    """
    return decimal_amount(amount, _PLACES[measure])


def decimal_amount(amount: int, places: int = 3) -> str:
    """Return a whole number of a smaller unit as a plain decimal: µL as mL, mg as g.

    >>> decimal_amount(30_769), decimal_amount(500), decimal_amount(1_250, 2)
    ('30.769', '0.5', '12.5')
    """
    sign, whole = ("-", -amount) if amount < 0 else ("", amount)
    number, rest = divmod(whole, 10**places)
    return f"{sign}{number}{f'.{rest:0{places}d}'.rstrip('0') if rest else ''}"
