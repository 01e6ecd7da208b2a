"""Whom to call in a recall, and in which order.

Guarantees: everybody who was sent any is on the list, also those of whom no name or number is
known; who may have most to drink still comes first, newest deliveries first among equals. Refuses:
to take somebody off the list because a call was made.
"""

from collections.abc import Iterable, Mapping, Sequence, Set

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Contact, Entry, Party
from ledger.domain.entries.choices import MoveAs, Reached
from ledger.domain.lots.balance import DRUNK
from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.service.lots.trace import Holder
from ledger.service.recall.answers import as_told, by_calls, last_told, left_there

EACH = 1_000_000
"""One counted thing in its smallest unit."""


class ToCall(Struct, frozen=True):
    """Somebody to call."""

    name: str | None
    """Who was written as the receiver; None when nobody was named."""
    known: Party | None
    """How to reach them, if the book knows."""
    deliveries: tuple[Holder, ...]
    """What they were sent and what came back from them, newest first."""
    pieces: int
    """Bottles they may have still, in millionths of one."""
    volume_ul: int
    """What they may have still by volume, in µL."""
    last_sent: str
    """ISO day of the newest delivery."""
    contacts: tuple[Entry[Contact], ...]
    """Calls to them, oldest first."""

    @property
    def is_reached(self) -> bool:
        """Whether somebody was spoken to, or answered with what is left."""
        return any(
            entry.facts.reached is Reached.SPOKEN or left_there(entry) for entry in self.contacts
        )

    @property
    def says_none_left(self) -> bool:
        """Whether the last that they said of it was that nothing is left."""
        told = last_told(self.contacts)
        return told is not None and told.amount == 0


def to_call(
    holders: Iterable[Holder],
    sizes_ul: Mapping[str, int],
    parties: Mapping[str, Party],
    contacts: Sequence[Entry[Contact]],
    ahead: Mapping[str, Set[str]],
) -> tuple[ToCall, ...]:
    """Return whom to call, in order.

    Args:
        holders: What went out of the recalled lots and came back.
        sizes_ul: What a bottle of each packed lot holds.
        parties: How to reach people, by name.
        contacts: Calls made since the recall began, oldest first.
        ahead: For the lot of each call, that lot and all that is made of it.
    """
    sent: dict[str | None, list[Holder]] = {}
    for holder in holders:
        if holder.moved_as in GOES_TO_PEOPLE or holder.moved_as is MoveAs.RETURNED:
            sent.setdefault(holder.party, []).append(holder)
    calls = []
    for name, items in sent.items():
        # What came back from nobody named leaves nobody to call.
        if name or any(holder.moved_as is not MoveAs.RETURNED for holder in items):
            theirs = tuple(entry for entry in contacts if name and entry.facts.party == name)
            left = _left(items, sizes_ul, theirs, ahead)
            calls.append(_call(name, items, left, parties.get(name or ""), theirs))
    # Sorting leaves equals in their order, so what is sorted by last counts first.
    by_name = sorted(calls, key=lambda call: call.name or "")
    newest_first = sorted(by_name, key=lambda call: call.last_sent, reverse=True)
    return tuple(sorted(newest_first, key=lambda call: -call.volume_ul))


def _call(
    name: str | None,
    items: Sequence[Holder],
    left: tuple[int, int],
    known: Party | None,
    contacts: tuple[Entry[Contact], ...],
) -> ToCall:
    pieces, volume = left
    return ToCall(
        name=name,
        known=known,
        deliveries=tuple(sorted(items, key=lambda holder: holder.on, reverse=True)),
        pieces=pieces,
        volume_ul=volume,
        last_sent=max((i.on for i in items if i.moved_as is not MoveAs.RETURNED), default=""),
        contacts=contacts,
    )


def _left(
    items: Iterable[Holder],
    sizes_ul: Mapping[str, int],
    contacts: Sequence[Entry[Contact]],
    ahead: Mapping[str, Set[str]],
) -> tuple[int, int]:
    """Return the bottles and the volume that somebody may have, by the book and their calls."""
    parts = [
        as_told(may_have(about, sizes_ul), about, told)
        for told, about in by_calls(items, contacts, ahead).items()
    ]
    return sum(pieces for pieces, _ in parts), sum(volume for _, volume in parts)


def may_have(items: Iterable[Holder], sizes_ul: Mapping[str, int]) -> tuple[int, int]:
    """Return the most that somebody may have still, of what went to them and came back.

    Args:
        items: What they were sent and what came back.
        sizes_ul: What a bottle of each packed lot holds, in µL.

    Returns:
        Bottles, in millionths of one, and the volume in all, in µL.
    """
    left: dict[str, int] = {}
    measures: dict[str, Measure] = {}
    for holder in items:
        if holder.moved_as not in DRUNK:
            left[holder.lot] = left.get(holder.lot, 0) + holder.amount
            measures[holder.lot] = holder.measure
    # By lot, so that what came back too much of one is not taken off another.
    counted = {lot: max(n, 0) for lot, n in left.items() if measures[lot] is Measure.UEACH}
    poured = sum(max(n, 0) for lot, n in left.items() if measures[lot] is Measure.UL)
    volume = sum(number * sizes_ul.get(lot, 0) // EACH for lot, number in counted.items())
    return sum(counted.values()), volume + poured
