"""What a batch holds when something went into it since it was last measured: by its replay.

Guarantees: where nothing did, or what did adds up as it was poured, the last level and what moved
since is the same and stays as it is; else the volume is what physics gives the mixture, and is
said to be reckoned. Refuses: to place solids of which no density is known; their mass is told.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Entry, Rinse
from ledger.domain.entries.choices import LotType, RinseTo
from ledger.domain.entries.plain import instant_text
from ledger.domain.lots.steps import Act
from ledger.science.contents.received import missing_of
from ledger.science.contents.replay import Happening
from ledger.service.account.replay import Replayed, replayed
from ledger.store.engine.connections import Connection
from ledger.store.read.amounts import Held
from ledger.store.read.queries import LotRow, Moment

ROUNDING_UL = 2
"""What the exact sums of volumes and the replay may differ by and be the same."""
LIGHTEST = 1.27
"""The most mL that a gram of what goes into a batch fills: pure alcohol, by OIML R 22."""


class Volume(Struct, frozen=True):
    """What a lot holds at a moment."""

    amount: int
    """Amount in its measure."""
    solids_mg: int
    """Mass that is in it and of which nobody knows what it fills."""
    is_reckoned: bool
    """Whether it is the volume reckoned for a mixture, which nobody has measured."""


def volumes(
    connection: Connection,
    lot: LotRow,
    entries: Sequence[Entry],
    summed: tuple[Held, Held],
    moment: Moment | None,
    skip: int = 0,
) -> tuple[Volume, Volume]:
    """Return what a lot holds just before a moment, and now.

    Args:
        connection: A connection in a transaction.
        lot: The lot.
        entries: Its entries in force, without the chain left out.
        summed: The last level and what moved since, then and now.
        moment: The moment; None: now.
        skip: A chain of corrections to leave out.
    """
    then, now = summed
    if lot.opened.lot_type is not LotType.MADE or not any(map(_puts_in, entries)):
        return _as_summed(then), _as_summed(now)
    found = replayed(connection, [lot.seq], skip)
    happened = found.replay.happenings(lot.opened.code)
    place = (instant_text(moment.at), moment.stands_for) if moment else None
    before = [
        item for item in happened if place is None or (item.step.at, item.step.stands_for) < place
    ]
    return _volume(found, before, then), _volume(found, happened, now)


def volume_now(found: Replayed, code: str, summed: int) -> Volume:
    """Return what a lot that was replayed holds now.

    Args:
        found: The replay.
        code: The lot's code.
        summed: The last level and what moved since.
    """
    return _volume(found, found.replay.happenings(code), Held(summed, 0))


def _puts_in(entry: Entry) -> bool:
    facts = entry.facts
    return isinstance(facts, Add) or (isinstance(facts, Rinse) and facts.went_to is RinseTo.BATCH)


def _as_summed(held: Held) -> Volume:
    return Volume(held.amount, held.solids_mg, is_reckoned=False)


def _volume(found: Replayed, happened: Sequence[Happening], summed: Held) -> Volume:
    since = list(_since_measured(happened))
    if not any(item.step.act is Act.INTO for item in since):
        return _as_summed(summed)
    reckoned = round(happened[-1].after.volume_ul)
    if reckoned <= 0:
        # Of an empty jar there is nothing to measure; what was drawn beyond it is missing.
        return Volume(-_overdrawn_ul(since), _unplaced_mg(found, since), is_reckoned=False)
    is_same = abs(reckoned - summed.amount) <= ROUNDING_UL
    return Volume(
        summed.amount if is_same else reckoned, _unplaced_mg(found, since), is_reckoned=not is_same
    )


def _overdrawn_ul(since: Iterable[Happening]) -> int:
    """Return what was drawn beyond what was there, where reading alone does not explain it."""
    draws = (item for item in since if item.step.act is Act.OUT and item.is_vague)
    return round(sum(item.step.amount - item.before_ul for item in draws))


def _since_measured(happened: Sequence[Happening]) -> Iterable[Happening]:
    last = max(
        (index for index, item in enumerate(happened) if item.step.act is Act.LEVEL), default=-1
    )
    return happened[last + 1 :]


def _unplaced_mg(found: Replayed, since: Iterable[Happening]) -> int:
    """Return the mass put in that fills nobody knows what, at most a mL a gram told by it."""
    unplaced = 0.0
    for item in since:
        lot = found.received.get(item.step.source or "")
        if item.step.act is not Act.INTO or lot is None or lot.measure is not Measure.MG:
            continue
        if missing_of(lot):
            unplaced += item.step.taken * LIGHTEST
        else:
            parts = item.moved.parts.values()
            unplaced += sum(p.mass_mg for p in parts if not p.volume_ul and not p.dissolved_in_mg)
    return round(unplaced)
