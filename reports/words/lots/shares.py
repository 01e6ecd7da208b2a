"""How much of one lot is in another, in words.

Guarantees: three figures that count; what was not measured is said to be so. Refuses: to add up
volumes, masses and pieces.
"""

from decimal import ROUND_HALF_EVEN, Context, Decimal

from ledger.domain.amounts.quantity import Measure
from ledger.service.lots.shares import Share

THREE = Context(prec=3, rounding=ROUND_HALF_EVEN)


NOT_MEASURED = "not measured"
"""Said where an amount was carried and nobody measured it."""
IN_CAKE = "stays in the cake"
"""Said of what clears a liquid and is filtered off with what it took out."""


_PER = {
    (Measure.MG, Measure.UL): (1000, "g/L"),
    (Measure.UL, Measure.MG): (1000, "mL/kg"),
    (Measure.UL, Measure.UEACH): (1000, "mL each"),
    (Measure.MG, Measure.UEACH): (1000, "g each"),
    (Measure.UEACH, Measure.UEACH): (1, "each"),
    (Measure.UEACH, Measure.UL): (1, "to 1 L"),
    (Measure.UEACH, Measure.MG): (1, "to 1 kg"),
}
"""What a share counts in, by what is carried and what it is in, with the factor; else per cent."""


def share_words(share: Share) -> str:
    """Return a share in words: a per cent of like measures, else the one in the other.

    >>> share_words(Share(30_000.0, Measure.UL, 450_000, Measure.UL, True))
    '6.67 %'
    >>> share_words(Share(3_750.0, Measure.UL, 15_000_000, Measure.UEACH, False))
    'at least 0.25 mL each'
    """
    number, unit = concentration(share)
    if share.is_in_cake:
        return IN_CAKE
    if not number:
        return NOT_MEASURED if not share.is_all else f"0 {unit}"
    return f"{'' if share.is_all else 'at least '}{number} {unit}"


def concentration(share: Share) -> tuple[str, str]:
    """Return the figure of a share and what it counts in; no figure for none or not measured."""
    factor, unit = _PER.get((share.measure, share.whole_measure), (100, "%"))
    if share.amount <= 0 or share.whole <= 0:
        return "", unit
    return _figure(share.amount * factor / share.whole), unit


def _figure(value: float) -> str:
    return f"{THREE.create_decimal(Decimal(value)).normalize():f}"
