"""Whom to call in a recall, and in which order.

Guarantees: everybody who was sent any is on the list, also those of whom no name or number is
known; who may have most to drink still comes first, newest deliveries first among equals. Refuses:
to take somebody off the list because a call was made.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from ledger.domain.entries import Contact, Entry, Party
from ledger.domain.entries.words import MoveAs, Reached
from ledger.domain.lots import GOES_TO_PEOPLE
from ledger.domain.quantity import Measure
from ledger.service.tracing import Holder

EACH = 1_000_000
"""One counted thing in its smallest unit."""
NONE_LEFT = "none left"
"""How the words of a call began when nothing was left, in books of the third form and before."""
DRUNK = frozenset({MoveAs.TASTING})
"""Moves of which nothing is left to call back."""


@dataclass(frozen=True, slots=True)
class ToCall:
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
    contacts: tuple[Entry, ...]
    """Calls to them, oldest first."""

    @property
    def is_reached(self) -> bool:
        """Whether somebody was spoken to."""
        return any(_facts(entry).reached is Reached.SPOKEN for entry in self.contacts)


def to_call(
    holders: Iterable[Holder],
    sizes_ul: Mapping[str, int],
    parties: Mapping[str, Party],
    contacts: Sequence[Entry],
) -> tuple[ToCall, ...]:
    """Return whom to call, in order.

    Args:
        holders: What went out of the recalled lots and came back.
        sizes_ul: What a bottle of each packed lot holds.
        parties: How to reach people, by name.
        contacts: Calls made since the recall began, oldest first.
    """
    sent: dict[str | None, list[Holder]] = {}
    for item in holders:
        if item.moved_as in GOES_TO_PEOPLE or item.moved_as is MoveAs.RETURNED:
            sent.setdefault(item.party, []).append(item)
    calls = [
        _call(
            name,
            items,
            sizes_ul,
            parties.get(name or ""),
            tuple(entry for entry in contacts if name and _facts(entry).party == name),
        )
        for name, items in sent.items()
        if name or any(item.moved_as is not MoveAs.RETURNED for item in items)
    ]
    by_name = sorted(calls, key=lambda call: call.name or "")
    newest_first = sorted(by_name, key=lambda call: call.last_sent, reverse=True)
    return tuple(sorted(newest_first, key=lambda call: -call.volume_ul))


def _call(
    name: str | None,
    items: Sequence[Holder],
    sizes_ul: Mapping[str, int],
    known: Party | None,
    contacts: tuple[Entry, ...],
) -> ToCall:
    pieces, volume = may_have(items, sizes_ul)
    told = _still_there(items, contacts)
    if told is not None and pieces:
        left = min(told, pieces)
        pieces, volume = left, volume * left // pieces
    return ToCall(
        name=name,
        known=known,
        deliveries=tuple(sorted(items, key=lambda item: item.on, reverse=True)),
        pieces=pieces,
        volume_ul=volume,
        last_sent=max((i.on for i in items if i.moved_as is not MoveAs.RETURNED), default=""),
        contacts=contacts,
    )


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
    for item in items:
        if item.moved_as not in DRUNK:
            left[item.lot] = left.get(item.lot, 0) + item.amount
            measures[item.lot] = item.measure
    counted = {lot: max(n, 0) for lot, n in left.items() if measures[lot] is Measure.UEACH}
    poured = sum(max(n, 0) for lot, n in left.items() if measures[lot] is Measure.UL)
    volume = sum(number * sizes_ul.get(lot, 0) // EACH for lot, number in counted.items())
    return sum(counted.values()), volume + poured


def _still_there(items: Iterable[Holder], contacts: Sequence[Entry]) -> int | None:
    """Return how many they said they have still, without what came back since."""
    told = [(entry, left) for entry in contacts if (left := _told(_facts(entry))) is not None]
    if not told:
        return None
    entry, left = told[-1]
    day = f"{entry.draft.happened.local():%Y-%m-%d}"
    came = sum(-i.amount for i in items if i.moved_as is MoveAs.RETURNED and i.on >= day)
    return max(left - came, 0)


def _told(facts: Contact) -> int | None:
    if facts.still_there:
        return facts.still_there.amount
    return 0 if (facts.words or "").startswith(NONE_LEFT) else None


def _facts(entry: Entry) -> Contact:
    facts = entry.draft.facts
    assert isinstance(facts, Contact)
    return facts
