"""How much is there of a lot, in words.

Guarantees: a volume that was reckoned for a mixture and that nobody measured is said to be about so
much, to three digits, and can be drawn as it is said.
"""

from ledger.domain.amounts.quantity import Measure, reckoned, show
from ledger.domain.lots.lot import Lot


def there_words(lot: Lot) -> str:
    """Return what is there of a lot; about so much where it is reckoned for a mixture."""
    return amount_there(lot.on_hand, lot.measure, is_reckoned=lot.is_reckoned)


def amount_there(amount: int, measure: Measure, *, is_reckoned: bool) -> str:
    """Return an amount that is there.

    >>> amount_there(969_606, Measure.UL, is_reckoned=True)
    'about 970 mL'
    """
    if is_reckoned:
        return f"about {show(reckoned(amount), measure)}"
    return show(amount, measure)
