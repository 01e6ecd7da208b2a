"""What went to somebody and what they said of it, in tests that need no book."""

from datetime import datetime
from typing import cast

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Contact, Entry
from ledger.domain.entries.choices import MoveAs, Reached
from ledger.service.lots.trace import Holder
from tests.domain.builders import NOW, entry

EACH = 1_000_000
UL, MG, UEACH = Measure.UL, Measure.MG, Measure.UEACH


def _on(day: int) -> datetime:
    return NOW.replace(day=day)


def went(
    amount: int,
    measure: Measure = UEACH,
    *,
    lot: str = "B-1",
    to: str | None = "Bar",
    how: MoveAs = MoveAs.SALE,
    day: int = 1,
) -> Holder:
    """What somebody was sent on a day of March; below zero what came back."""
    return Holder(lot, to, how, amount, measure, f"2026-03-{day:02}", None, (_on(day), day))


def back(amount: int, measure: Measure = UEACH, *, lot: str = "B-1", day: int = 1) -> Holder:
    return went(-amount, measure, lot=lot, how=MoveAs.RETURNED, day=day)


def said(
    left: Quantity | None,
    reached: Reached = Reached.SPOKEN,
    words: str | None = None,
    *,
    lot: str = "B-1",
    day: int = 9,
    party: str = "Bar",
) -> Entry[Contact]:
    """What somebody said of a lot on a day of March."""
    call = entry(Contact(party, reached, left, words), day, _on(day), lot=lot)
    return cast(Entry[Contact], call)
