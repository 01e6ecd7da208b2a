"""A lot in brief, as lists and traces have it."""

from datetime import date

from ledger.domain.entries.choices import Grade, LotType
from ledger.domain.lots.lot import Lot, Status
from reports.json.kit.answer import Amount, Answer, Code, amount_of


class LotBrief(Answer, frozen=True):
    """A lot in brief."""

    code: Code
    """Its code."""
    lot_type: LotType
    """How it came into the book."""
    material: str | None
    """Code of its material, for a received lot."""
    product: str | None
    """Name of the product, for a made or packed lot."""
    name: str
    """What it is, for people."""
    status: Status
    """Where it stands."""
    on_hand: Amount
    """What is there."""
    is_reckoned: bool
    """Whether that is the volume reckoned for a mixture, which nobody has measured."""
    best_before: date | None
    """Its best-before date."""
    look: Grade | None
    """The grade of the last look at it, or at the lot it was filled from."""


def lot_brief(lot: Lot) -> LotBrief:
    """Return a lot in brief."""
    return LotBrief(
        code=lot.code,
        lot_type=lot.lot_type,
        material=lot.material,
        product=lot.product,
        name=lot.name,
        status=lot.status,
        on_hand=amount_of(lot.on_hand, lot.measure),
        is_reckoned=lot.is_reckoned,
        best_before=lot.best_before,
        look=lot.grade,
    )
