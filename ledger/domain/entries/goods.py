"""Bottling, labels, sending, and what comes back.

Guarantees: amounts and names as they were written. Refuses: behaviour; what these move stands in
`ledger.domain.lots.movements`.
"""

from datetime import date
from typing import ClassVar

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import (
    Across,
    Given,
    GivenNumber,
    LotRef,
    MoveAs,
    Outcome,
    PersonRef,
    SeqRef,
)
from ledger.domain.entries.spine import Facts


class Bottle(Facts, frozen=True):
    """A lot is filled into bottles; opens the packed lot."""

    KIND: ClassVar[str] = "bottle"

    source: LotRef
    """Code of the bulk lot."""
    count: int
    """How many were filled."""
    size: Quantity
    """What one holds."""
    drawn: Quantity
    """Bulk volume it took."""
    bottles: LotRef | None = None
    """Code of the bottles' lot."""
    caps: LotRef | None = None
    """Code of the closures' lot."""
    fill_check_mg: int | None = None
    """Weight of a checked fill in milligrams."""
    first_bottle: int | None = None
    """Number of the first bottle, when they are numbered."""
    last_bottle: int | None = None
    """Number of the last bottle."""
    best_before: date | None = None
    """Best-before date decided for this filling."""
    labour_minutes: int | None = None
    """Minutes of work it took."""


class Cases(Facts, frozen=True):
    """Bottles are put into cases, each of which has a number of its own."""

    KIND: ClassVar[str] = "cases"

    count: int
    """How many cases."""
    holds: int
    """How many bottles stand in each."""
    first_case: GivenNumber
    """Number of the first in the house; the others follow it."""
    company_prefix: Given | None = None
    """The house's GS1 Company Prefix when they were filled; None: it had none."""


class Labels(Facts, frozen=True):
    """Labels printed, used and spoiled for a lot."""

    KIND: ClassVar[str] = "labels"

    printed: int
    """How many were printed."""
    used: int | None = None
    """How many went on bottles."""
    spoiled: int | None = None
    """How many were spoiled and destroyed."""
    stock: LotRef | None = None
    """Code of the lot of blank labels that they were printed on."""
    across: Across | None = None
    """The word printed across them; None: they are bottle labels."""

    @property
    def for_bottles(self) -> int:
        """How many were printed for bottles that leave."""
        return 0 if self.across else self.printed


class Move(Facts, frozen=True):
    """Goods leave, or come back."""

    KIND: ClassVar[str] = "move"

    moved_as: MoveAs
    """Sale, sample, breakage and so on."""
    amount: Quantity
    """How much."""
    party: str | None = None
    """To whom, or from whom when it came back."""
    document: str | None = None
    """Delivery note, invoice or stall sheet."""
    witness: str | None = None
    """Who saw it destroyed."""


class Complaint(Facts, frozen=True):
    """Somebody is not content."""

    KIND: ClassVar[str] = "complaint"

    symptom: str
    """What is wrong, in the trade's words where they fit."""
    party: str | None = None
    """Who complains."""
    opened: str | None = None
    """When it was opened."""
    stored: str | None = None
    """Where and how it was kept."""
    mixed: str | None = None
    """How it was mixed."""
    photo_sha256: str | None = None
    """Hash of a photo's file."""
    words: str | None = None
    """What else was said."""
    photo: str | None = None
    """Name of the photo's file."""
    answer_days: int | None = None
    """In how many days it is to be answered; None in old books: not due."""


class Answer(Facts, frozen=True):
    """What became of a complaint, and who told the customer."""

    KIND: ClassVar[str] = "answer"

    complaint: SeqRef
    """Number of the complaint; of one that was corrected, its first."""
    outcome: Outcome
    """What became of it."""
    told_by: PersonRef | None = None
    """Initials of who told the customer; None: nobody did yet."""
    told_on: date | None = None
    """Day on which the customer was told."""
    is_closed: bool | None = None
    """Whether it is closed with this; None: when the customer was told."""
    words: str | None = None
    """What was found, or said."""
