"""A lot as lists and traces tell it: what it is, where it stands and how much of it is there.

Guarantees: a lot is named and its status told here and nowhere else, whether it is read with many
others or folded from its entries. What goes into a lot that was finished or released opens it
again.
"""

from datetime import UTC, date, datetime
from enum import StrEnum
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, tidy
from ledger.domain.entries import When
from ledger.domain.entries.choices import Grade, LotType, MaterialKind, ProductKind, Verdict


class Status(StrEnum):
    """Where a lot stands, in words for people."""

    IN_STOCK = "in stock"
    MAKING = "being made"
    FINISHED = "finished"
    PACKED = "packed"
    HELD = "on hold"
    RELEASED = "released"
    REJECTED = "rejected"
    REWORK = "to be reworked"
    RECALLED = "recalled"
    STRUCK = "struck out"


_JUDGED = {
    Verdict.HOLD: Status.HELD,
    Verdict.RELEASE: Status.RELEASED,
    Verdict.REJECT: Status.REJECTED,
    Verdict.REWORK: Status.REWORK,
    Verdict.RECALL: Status.RECALLED,
}
BARRED = frozenset({Status.HELD, Status.REJECTED, Status.RECALLED})
"""Statuses of lots that are not to be used without a reason."""
BARRING = frozenset({Verdict.HOLD, Verdict.REJECT, Verdict.RECALL})
"""Verdicts that give a lot such a status."""


class Stand(NamedTuple):
    """How far a lot is and what was decided about it, as its entries say one after the other."""

    verdict: Verdict | None = None
    """The last verdict; None where there is none, or a release of what was added to since."""
    is_finished: bool = False
    """Whether its making ended and nothing went in since."""

    def judged(self, verdict: Verdict) -> "Stand":
        """Return how it stands after a verdict."""
        return self._replace(verdict=verdict)

    def finished(self) -> "Stand":
        """Return how it stands after the end of its making."""
        return self._replace(is_finished=True)

    def opened_again(self) -> "Stand":
        """Return how it stands after something went in: no longer finished, no longer released.

        A hold, a rejection and a recall stay; what went in takes none of them away.
        """
        if self.verdict is Verdict.RELEASE:
            return AT_FIRST
        return self._replace(is_finished=False) if self.is_finished else self


AT_FIRST = Stand()
"""How every lot stands when it is opened."""


class Lot(Struct, frozen=True):
    """A lot in brief."""

    seq: int
    """Its number, which is that of the entry that opened it."""
    code: str
    """Its code."""
    lot_type: LotType
    """How it came into the book."""
    measure: Measure
    """In what it is counted."""
    opened_at: When | None
    """When it was opened; None when that was struck."""
    name: str
    """What it is, for people."""
    status: Status
    """Where it stands."""
    on_hand: int
    """What is there, in its measure."""
    is_reckoned: bool = False
    """Whether that is the volume reckoned for a mixture, which nobody has measured."""
    material: str | None = None
    """Code of its material, for a received lot."""
    sort: MaterialKind | None = None
    """Kind of its material."""
    supplier: str | None = None
    """Who sent it."""
    supplier_lot: str | None = None
    """The supplier's lot."""
    product: str | None = None
    """Name of the product, for a made or packed lot."""
    product_kind: ProductKind | None = None
    """Kind of the product, for a made or packed lot."""
    bulk: int | None = None
    """Number of the lot it was filled from."""
    best_before: date | None = None
    """The date that was decided for it or given; where dates are reckoned, what they come to."""
    grade: Grade | None = None
    """The grade of the last look at it, or at the lot it was filled from."""

    @property
    def position(self) -> tuple[datetime, int]:
        """Its place among lots: by when it was opened, struck ones first, then by number."""
        return (self.opened_at.at if self.opened_at else _FIRST, self.seq)


_FIRST = datetime.min.replace(tzinfo=UTC)


def name_of(lot_type: LotType, what: str, size: str = "", *, is_struck: bool) -> str:
    """Return what a lot is, for people.

    Args:
        lot_type: How it came into the book.
        what: Name of its material, of its product, or of what is in its bottles; empty when
            unknown, and for rinse liquor and struck lots.
        size: Size of its bottles, as written.
        is_struck: Whether the entry that opened it was struck.

    >>> name_of(LotType.PACKED, "Orange syrup", "250mL", is_struck=False)
    'Orange syrup, 250 mL'
    """
    if is_struck:
        return "Struck lot"
    if lot_type is LotType.RINSE:
        return "Rinse liquor"
    return f"{what or 'bottled'}, {tidy(size)}" if lot_type is LotType.PACKED else what


def status_of(lot_type: LotType, stand: Stand, *, is_struck: bool) -> Status:
    """Return where a lot stands: the verdict that counts, else how far its making is."""
    if is_struck:
        return Status.STRUCK
    if stand.verdict:
        return _JUDGED[stand.verdict]
    if lot_type is LotType.MADE:
        return Status.FINISHED if stand.is_finished else Status.MAKING
    return Status.PACKED if lot_type is LotType.PACKED else Status.IN_STOCK


def filled_from(lot: Lot, bulk: Lot) -> Lot:
    """Return a packed lot as what it was filled from: its product, its kind, and its last look."""
    return replace(
        lot,
        bulk=bulk.seq,
        product=bulk.name,
        product_kind=bulk.product_kind,
        grade=lot.grade or bulk.grade,
    )


def by_date(lot: Lot) -> tuple[date, datetime, int]:
    """Return the place of a lot when the earliest date goes first, then what was opened first."""
    return (lot.best_before or date.max, *lot.position)
