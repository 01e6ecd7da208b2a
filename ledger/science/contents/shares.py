"""How much of a lot is in others, by what happened to each.

Guarantees: what left a lot before something came was never in it; what is drawn carries its share
of all that was there then; a way that nobody measured is told apart from one that carries nothing;
forward and back agree. Refuses: to guess what nobody measured.

Mixing is taken to be even and losses to be like the rest (common practice, no source): what a
filter kept is taken to have held as much of each input as what came through. A clarifier stays in
the cake, and packing round what is packed.
"""

from collections.abc import Mapping, Sequence
from enum import Enum, auto

from msgspec import Struct

from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.state import STAYS_IN_THE_CAKE
from ledger.domain.lots.steps import Act
from ledger.science.contents.received import NOT_RETAINED, ReceivedLot
from ledger.science.contents.replay import Happening

FILTERED, COUNTED = "filter", "count"
"""Kinds of entry that leave a cake, and that only tell how much is there."""


class Stays(Enum):
    """Where a lot stays that goes into others."""

    IN_LIQUID = auto()
    """In the liquid, wherever that goes."""
    IN_CAKE = auto()
    """In the filter: it touches what it is put into and is not in it."""
    ROUND_IT = auto()
    """Round what it was packed with, and not in what that is poured into."""


def stays(lot: ReceivedLot | None) -> Stays:
    """Return where a lot stays; None is one that was made here."""
    return Stays.IN_LIQUID if lot is None else stays_as(lot.sort)


def stays_as(sort: MaterialKind | None) -> Stays:
    """Return where a lot of a kind of material stays; None is no material."""
    if sort in STAYS_IN_THE_CAKE:
        return Stays.IN_CAKE
    return Stays.ROUND_IT if sort in NOT_RETAINED else Stays.IN_LIQUID


class Carrying(Struct, frozen=True):
    """How much of one lot is in another."""

    amount: float
    """How much, in the smallest unit of the lot that is carried."""
    whole: float
    """How much there was of the other lot then, in the smallest unit of its measure."""
    is_all: bool
    """Whether every way was measured; else there is at least this much."""


class Shares(Struct, frozen=True):
    """How much of a lot is in others, or of others in it, and the ways it went."""

    lots: Mapping[str, Carrying]
    """For each lot that holds or held some, how much."""
    ways: Mapping[tuple[str, str], int]
    """What went from lot to lot in draws that can have carried some, in the measure of the lot
    left, as it first or last went; 0: carried, not measured."""


class Held(Struct):
    """What is known of something in a lot while its steps are taken."""

    amount: float = 0.0
    can: bool = False
    """Whether any can be there."""
    in_doubt: bool = False
    """Whether there may be more than is counted."""

    def keep(self, share: float, *, is_vague: bool = False) -> None:
        """Leave ``share`` of it there; a vague step that leaves none may have left some."""
        self.amount *= share
        if share <= 0 and not is_vague:
            self.can = self.in_doubt = False
        self.in_doubt |= self.can and is_vague

    def join(self, other: "Held", share: float, *, in_doubt: bool = False) -> None:
        """Take ``share`` of another in; ``in_doubt`` where the step tells less than it took."""
        self.amount += other.amount * share
        self.can |= other.can
        self.in_doubt |= other.in_doubt or (other.can and in_doubt)

    def copy(self) -> "Held":
        """Return it as it is now, to be changed apart."""
        return Held(self.amount, self.can, self.in_doubt)


def told_at(happened: Sequence[Happening]) -> int:
    """Return which step left a lot as its figures tell it; the last when none left a volume.

    That is the last that changed what it is made of: draws, returns and counts leave that alone.
    """
    for index in range(len(happened) - 1, -1, -1):
        item = happened[index]
        is_change = (item.step.act is Act.INTO and not item.step.outside) or (
            item.step.act is Act.LEVEL and (item.step.kind != COUNTED or item.kept >= 1)
        )
        if is_change and item.after.volume_ul > 0:
            return index
    return len(happened) - 1
