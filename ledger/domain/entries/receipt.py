"""What comes into the house.

Guarantees: a receipt opens a received lot.
"""

from datetime import date
from typing import ClassVar

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import FoodGrade, MaterialRef
from ledger.domain.entries.spine import Facts


class Receipt(Facts, frozen=True):
    """A delivery of one material, one supplier's lot."""

    KIND: ClassVar[str] = "receipt"

    material: MaterialRef
    """Code of the material."""
    amount: Quantity
    """How much came."""
    supplier: str | None = None
    """Who sent it."""
    supplier_lot: str | None = None
    """The supplier's own lot number."""
    cost_minor: int | None = None
    """What it cost for the whole amount, in the house's currency, hundredths if not said."""
    best_before: date | None = None
    """The supplier's best-before or retest date."""
    certificate: str | None = None
    """Reference of the certificate of analysis."""
    certificate_sha256: str | None = None
    """Hash of the certificate's file, 64 hexadecimal digits."""
    density_mg_per_l: int | None = None
    """Density of this lot in mg/L, when measured or certified."""
    abv_mpct: int | None = None
    """Strength of this lot in thousandths of a per cent by volume at 20 °C."""
    food_grade: FoodGrade | None = None
    """What this lot's papers say; None: as the material says."""
    duty_minor: int | None = None
    """How much of the cost is spirit duty, counted as the cost."""
    document: str | None = None
    """Number of the delivery note or invoice."""
    cost_digits: int | None = None
    """Digits after the point that cost and duty are kept with; None: two, hundredths."""
