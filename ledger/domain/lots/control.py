"""What a lot is held to: its formula, what went into it, and the vessel it is made in.

Guarantees: gathered before any rule runs, like the scene it is part of.
"""

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Formula, Limit
from ledger.domain.entries.choices import MaterialKind, ProductKind
from ledger.domain.lots.lot import Status
from ledger.domain.lots.readings import Reading
from ledger.domain.masters.formulas import Called


class Input(Struct, frozen=True):
    """A lot that went into the lot, in brief."""

    code: str
    """Its code."""
    measure: Measure
    """In what it is counted."""
    status: Status
    """Where it stands now."""
    material: str | None = None
    """Code of its material, for a received lot."""
    sort: MaterialKind | None = None
    """Kind of its material."""
    formula: str | None = None
    """Code of the formula it was made by, else of one for a product of its name."""
    product_kind: ProductKind | None = None
    """Kind of product, for a lot made here, packed or not."""

    @property
    def called(self) -> Called:
        """What a formula's line calls it."""
        return Called(self.material, self.formula)


class LastHeld(Struct, frozen=True):
    """What a vessel last held before the draft, uncleaned since."""

    vessel: str
    """The vessel, as it was written."""
    lot: str
    """Code of the lot."""
    product: str
    """What the lot is."""
    product_kind: ProductKind
    """Its kind."""


class Vessel(Struct, frozen=True):
    """A vessel that the book knows the size of, with what is in it after the draft."""

    name: str
    """The vessel, as it was written."""
    holds_ul: int
    """How much it holds, in µL."""
    would_hold_ul: int
    """How much is in it after the draft, as reckoned, in µL."""


class Doubted(Struct, frozen=True):
    """What makes a clear look of a drink doubtful."""

    oils: str
    """The kinds of oil in it."""
    mg_per_l: float
    """How much of them is in the drink, in mg/L."""
    held_mg_per_l: float
    """The most that such a drink holds clear, by the best of what is published."""


class Control(Struct, frozen=True):
    """What the book holds a lot to."""

    formula: Formula | None = None
    """The version that it follows."""
    is_withdrawn: bool = False
    """Whether that version is withdrawn."""
    inputs: tuple[Input, ...] = ()
    """The lots that went into it, and those that the draft adds."""
    last_held: LastHeld | None = None
    """What the draft's vessel last held, when it was not cleaned since."""
    vessel: Vessel | None = None
    """What the lot stands in, when something is put into it and its size is known."""
    strength_mpct: float | None = None
    """Its strength as made, in thousandths of a per cent by volume and not rounded; None when not
    known."""
    readings: tuple[Reading, ...] = ()
    """The reading that is entered, or the last ones of what is released, beside the book."""
    doubted: Doubted | None = None
    """What makes a look that is entered doubtful."""
    claim: Limit | None = None
    """The limit whose words its label claims, in force or not."""

    def is_made(self, code: str) -> bool:
        """Return whether an input was made here, by its code."""
        return any(lot.code == code and lot.product_kind is not None for lot in self.inputs)

    def called(self, code: str) -> Called | None:
        """Return what a formula calls an input, by its code."""
        return next((lot.called for lot in self.inputs if lot.code == code), None)
