"""Where all of a lot is: the balance that a recall is judged by.

Guarantees: made = on hand + used + sent + samples + unnamed + kept back + broken + destroyed +
wasted + unexplained, to the smallest unit, and only the last may be below zero; what went to people
whom nobody can name is told apart and is not accounted for; what came back is counted on
hand and no longer as sent or as a sample. Refuses: to let what is missing of one lot be made good
by what is too much of another.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from decimal import ROUND_DOWN, Decimal
from typing import NamedTuple

from msgspec import Struct

from ledger.domain.entries.choices import MoveAs, Place
from ledger.domain.masters.parties import is_named

DRUNK = frozenset({MoveAs.TASTING})
"""Moves of which nothing is left to call back, so nobody need be named."""
COMES_BACK = (MoveAs.ON_RETURN, MoveAs.SALE, MoveAs.SAMPLE, MoveAs.TASTING)
"""Ways to go to people, those of which goods come back most often first."""

Moves = Iterable[tuple[str | None, MoveAs, int]]
"""What went out or came back: who, how, and how much, never below zero."""


class Balance(Struct, frozen=True):
    """Where a lot is, or several of one measure together; all in the smallest unit."""

    made: int = 0
    """What there was of it in all."""
    on_hand: int = 0
    """What the book says is here; nothing where it says less than nothing."""
    used: int = 0
    """What went into other lots."""
    sent: int = 0
    """What was sold or sent on sale or return to somebody, without what came back."""
    returned: int = 0
    """What came back; it is on hand, or went on from there."""
    samples: int = 0
    """What was given to somebody as samples or poured at tastings, without what came back."""
    unnamed: int = 0
    """What went to people whom nobody can name, without what came back."""
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

    def parts(self) -> dict[str, int]:
        """Return what was made and where it all is, by name, in the order it is shown."""
        return {
            "made": self.made,
            "on_hand": self.on_hand,
            "used": self.used,
            "sent": self.sent,
            "returned": self.returned,
            "samples": self.samples,
            "unnamed": self.unnamed,
            "kept_back": self.kept_back,
            "broken": self.broken,
            "destroyed": self.destroyed,
            "wasted": self.wasted,
            "unexplained": self.unexplained,
        }

    def _told(self) -> int:
        here = self.on_hand + self.used + self.kept_back
        gone = self.broken + self.destroyed + self.wasted
        return here + self.sent + self.samples + self.unnamed + gone

    @property
    def accounted_percent(self) -> Decimal:
        """The share accounted for, in per cent to one decimal, never rounded up to all.

        >>> Balance(made=3000, on_hand=2999, astray=1).accounted_percent
        Decimal('99.9')
        >>> Balance(made=8, sent=6, unnamed=2).accounted_percent
        Decimal('75.0')
        >>> Balance().accounted_percent
        Decimal('100.0')
        """
        if self.made <= 0:
            return Decimal("100.0") if self.astray + self.unnamed == 0 else Decimal("0.0")
        missing = self.astray + self.unnamed
        share = Decimal(100 * max(self.made - missing, 0)) / self.made
        return share.quantize(Decimal("0.1"), ROUND_DOWN)


class Out(NamedTuple):
    """What is out still of what went to people."""

    named: Mapping[MoveAs, int]
    """What somebody has who can be named, and what was drunk at once, by how it went."""
    unnamed: int
    """What people have whom nobody can name."""


def still_out(moves: Moves) -> Out:
    """Return what is out still of what went to people.

    What somebody sent back is of what they were sent. What goes beyond that, or came from nobody
    named, is of what the others have; what goes beyond all that ever went out is of nothing.

    >>> out = still_out([("Bar", MoveAs.SALE, 6), ("Inn", MoveAs.SAMPLE, 3),
    ...                  ("Inn", MoveAs.RETURNED, 2), ("market", MoveAs.SALE, 4)])
    >>> dict(out.named), out.unnamed
    ({<MoveAs.SALE: 'sale'>: 6, <MoveAs.SAMPLE: 'sample'>: 1}, 4)
    """
    out: dict[str | None, Counter[MoveAs]] = {}
    back: Counter[str | None] = Counter()
    for party, moved_as, amount in moves:
        if moved_as in COMES_BACK:
            out.setdefault(party, Counter())[moved_as] += amount
        elif moved_as is MoveAs.RETURNED:
            back[party] += amount
    over = sum(_take_back(out.get(party, Counter()), amount) for party, amount in back.items())
    named, unnamed = Counter[MoveAs](), Counter[MoveAs]()
    for party, ways in out.items():
        for way, amount in ways.items():
            (named if is_named(party) or way in DRUNK else unnamed)[way] += amount
    _take_back(named, _take_back(unnamed, over))
    # The sign leaves out the ways by which nothing is out.
    return Out(+named, unnamed.total())


def _take_back(out: Counter[MoveAs], amount: int) -> int:
    """Take what came back from what went out; returns what is left over."""
    for way in COMES_BACK:
        taken = min(out[way], amount)
        out[way] -= taken
        amount -= taken
    return amount


def balance_of(
    *,
    made: int,
    on_hand: int,
    used: int = 0,
    moves: Moves = (),
    gone: Mapping[Place, int] | None = None,
) -> Balance:
    """Return the balance of one lot from what moved.

    Args:
        made: What there was of it in all.
        on_hand: What the book says is here.
        used: What went into other lots.
        moves: What went to people and came back.
        gone: What left otherwise.

    >>> bar, back = ("Bar", MoveAs.SALE, 8), ("Bar", MoveAs.RETURNED, 1)
    >>> balance_of(made=15, on_hand=8, moves=[bar, back]).unexplained
    0
    """
    told, lost = list(moves), gone or {}
    named, unnamed = still_out(told)
    balance = Balance(
        made=made,
        on_hand=max(on_hand, 0),
        used=used,
        sent=named.get(MoveAs.SALE, 0) + named.get(MoveAs.ON_RETURN, 0),
        returned=sum(amount for _, moved_as, amount in told if moved_as is MoveAs.RETURNED),
        samples=named.get(MoveAs.SAMPLE, 0) + named.get(MoveAs.TASTING, 0),
        unnamed=unnamed,
        kept_back=lost.get(Place.RETAINED, 0),
        broken=lost.get(Place.BREAKAGE, 0),
        destroyed=lost.get(Place.DESTROYED, 0),
        wasted=lost.get(Place.WASTE, 0),
    )
    return summed([balance])


def summed(balances: Iterable[Balance]) -> Balance:
    """Return the balance of several lots of one measure together."""
    parts = list(balances)
    names = [name for name in Balance.__struct_fields__ if name != "astray"]
    totals = {name: sum(getattr(part, name) for part in parts) for name in names}
    return Balance(**totals, astray=sum(abs(part.unexplained) for part in parts))
