"""What those who were called in a recall say they have still.

Guarantees: nothing left is an answer like any other; a call tells of the lot it is about and what
is made of it, and of no other; what came back after a call is not there any more, and what came
back before it was not counted in it. Refuses: an answer out of a call that nobody took, and more
than the book says went there.
"""

from collections.abc import Iterable, Mapping, Sequence, Set
from datetime import datetime
from typing import NamedTuple

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Contact, Entry
from ledger.domain.entries.choices import MoveAs, Reached
from ledger.service.lots.trace import Holder

NONE_LEFT = "none left"
"""How the words of a call began when nothing was left, in books of the third form and before."""


class Told(NamedTuple):
    """How much somebody said is left."""

    amount: int
    """How much, in the smallest unit; 0: nothing."""
    measure: Measure
    """Its measure."""
    position: tuple[datetime, int]
    """The place of the call among all entries: by when it happened, then by number."""


def left_there(entry: Entry[Contact]) -> Told | None:
    """Return how much somebody said in a call is left; None when they did not say."""
    facts = entry.facts
    if facts.reached is Reached.NO_ANSWER:
        return None
    if facts.still_there:
        return Told(facts.still_there.amount, facts.still_there.measure, entry.position)
    words = facts.words or ""
    # Not by how they begin alone, as other words begin like it.
    is_none = words == NONE_LEFT or words.startswith(f"{NONE_LEFT}, ")
    return Told(0, Measure.UEACH, entry.position) if is_none else None


def last_told(contacts: Sequence[Entry[Contact]]) -> Told | None:
    """Return the last that was said of what is left, of calls in order; None when nothing was."""
    told = (left_there(entry) for entry in reversed(contacts))
    return next((answer for answer in told if answer), None)


def by_calls(
    items: Iterable[Holder], contacts: Sequence[Entry[Contact]], ahead: Mapping[str, Set[str]]
) -> dict[Told | None, list[Holder]]:
    """Return what somebody was sent, by the last that was said of it; None: nothing was.

    Args:
        items: What they were sent and what came back.
        contacts: Calls to them, oldest first.
        ahead: For the lot of each call, that lot and all that is made of it.
    """
    by_answer: dict[Told | None, list[Holder]] = {}
    for item in items:
        about = [entry for entry in contacts if item.lot in ahead[entry.draft.lot or ""]]
        by_answer.setdefault(last_told(about), []).append(item)
    return by_answer


def as_told(
    by_book: tuple[int, int], items: Iterable[Holder], told: Told | None
) -> tuple[int, int]:
    """Return the bottles and the volume they may have: by the book, and no more than they said.

    What they said of bottles takes the same share off the volume. A weight says nothing of either.

    Args:
        by_book: Bottles, in millionths of one, and the volume in all, in µL.
        items: What they were sent and what came back.
        told: The last that they said of these; None when nothing was.
    """
    if told is None:
        return by_book
    back = [i for i in items if i.moved_as is MoveAs.RETURNED and i.position > told.position]
    left = max(told.amount + sum(i.amount for i in back if i.measure is told.measure), 0)
    pieces, volume = by_book
    if left == 0:
        return 0, 0
    if told.measure is Measure.UEACH and pieces:
        return min(left, pieces), volume * min(left, pieces) // pieces
    return pieces, min(left, volume) if told.measure is Measure.UL else volume
