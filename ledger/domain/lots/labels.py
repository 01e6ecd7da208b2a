"""Labels of a lot: which may be printed for bottles that leave, and what became of them.

Guarantees: labels with a word across are no bottle labels and are never counted as such; labels
of before there was such a word are bottle labels.
"""

from datetime import date

from msgspec import Struct

from ledger.domain.entries import Bottle, Labels, entries_of
from ledger.domain.entries.choices import Across
from ledger.domain.lots.lot import BARRED, Status
from ledger.domain.lots.state import LotState, is_past_date, latest, status


class Count(Struct, frozen=True):
    """What was printed of bottle labels for a lot, and what became of them."""

    printed: int
    """How many were printed."""
    used: int
    """How many went on bottles."""
    spoiled: int
    """How many were spoiled and destroyed."""
    bottles: int
    """How many bottles were filled."""

    @property
    def adds_up(self) -> bool:
        """Whether those printed are on the bottles or were spoiled."""
        return self.printed == self.used + self.spoiled and self.used == self.bottles


def count_of(lot: LotState) -> Count:
    """Return what was printed for a lot, and what became of it."""
    sheets = [entry.facts for entry in entries_of(lot.entries, Labels)]
    filled = latest(lot, Bottle)
    return Count(
        printed=sum(sheet.for_bottles for sheet in sheets),
        used=sum(sheet.used or 0 for sheet in sheets),
        spoiled=sum(sheet.spoiled or 0 for sheet in sheets),
        bottles=filled.count if filled else 0,
    )


def why_not(lot: LotState, day: date) -> str | None:
    """Return, as a sentence, why a lot needs no bottle labels on a day; None where it may leave."""
    now = status(lot)
    if now in BARRED:
        return f"{lot.code} is {now}."
    if is_past_date(lot, day):
        return f"{lot.code} was best before {lot.best_before}; this is {day}."
    if lot.on_hand <= 0:
        return f"Nothing of {lot.code} is there any more."
    return None


def across(lot: LotState, day: date) -> Across | None:
    """Return the word that is printed across labels of a lot on a day; None: bottle labels.

    What is on hold may leave one day; all else that needs no labels gets specimens.
    """
    if why_not(lot, day) is None:
        return None
    return Across.HOLD if status(lot) is Status.HELD else Across.SPECIMEN
