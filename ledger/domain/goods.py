"""Where all of a lot is: the balance that a recall is judged by.

Guarantees: made = on hand + used + sent + samples + kept back + broken + destroyed + wasted +
unexplained, to the smallest unit; what came back is counted on hand and no longer as sent. Refuses:
to let what is missing of one lot be made good by what is too much of another.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import ROUND_DOWN, Decimal

from ledger.domain.entries.words import Place


@dataclass(frozen=True, slots=True)
class Balance:
    """Where a lot is, or several of one measure together; all in the smallest unit."""

    made: int = 0
    """What there was of it in all."""
    on_hand: int = 0
    """What the book says is here."""
    used: int = 0
    """What went into other lots."""
    sent: int = 0
    """What was sold or sent on sale or return, without what came back."""
    returned: int = 0
    """What came back; it is on hand, or went on from there."""
    samples: int = 0
    """What was given as samples or poured at tastings."""
    kept_back: int = 0
    """What was kept back as samples of the lot."""
    broken: int = 0
    """What broke."""
    destroyed: int = 0
    """What was destroyed."""
    wasted: int = 0
    """What was poured away."""
    astray: int = 0
    """What is missing of some lots and too much of others, both counted."""

    @property
    def unexplained(self) -> int:
        """What was made and stands nowhere; below zero where more stands than was made."""
        return self.made - self._told()

    def _told(self) -> int:
        here = self.on_hand + self.used + self.kept_back
        return here + self.sent + self.samples + self.broken + self.destroyed + self.wasted

    @property
    def accounted_percent(self) -> Decimal:
        """The share accounted for, in per cent to one decimal, never rounded up to all.

        >>> Balance(made=3000, on_hand=2999, astray=1).accounted_percent
        Decimal('99.9')
        >>> Balance().accounted_percent
        Decimal('100.0')
        """
        if self.made <= 0:
            return Decimal("100.0") if self.astray == 0 else Decimal("0.0")
        share = Decimal(100 * max(self.made - self.astray, 0)) / self.made
        return share.quantize(Decimal("0.1"), ROUND_DOWN)


def balance_of(
    *,
    made: int,
    on_hand: int,
    used: int = 0,
    returned: int = 0,
    gone: Mapping[Place, int] | None = None,
) -> Balance:
    """Return the balance of one lot from what moved.

    >>> balance_of(made=15, on_hand=8, returned=1, gone={Place.SALE: 8}).unexplained
    0
    """
    out = gone or {}
    found = Balance(
        made=made,
        on_hand=on_hand,
        used=used,
        sent=out.get(Place.SALE, 0) + out.get(Place.ON_RETURN, 0) - returned,
        returned=returned,
        samples=out.get(Place.SAMPLE, 0) + out.get(Place.TASTING, 0),
        kept_back=out.get(Place.RETAINED, 0),
        broken=out.get(Place.BREAKAGE, 0),
        destroyed=out.get(Place.DESTROYED, 0),
        wasted=out.get(Place.WASTE, 0),
    )
    return summed([found])


def summed(balances: Iterable[Balance]) -> Balance:
    """Return the balance of several lots of one measure together."""
    parts = list(balances)
    names = [name for name in Balance.__slots__ if name != "astray"]
    totals = {name: sum(getattr(part, name) for part in parts) for name in names}
    return Balance(**totals, astray=sum(abs(part.unexplained) for part in parts))
