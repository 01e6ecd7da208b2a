"""What became of the liquid of a batch, up to the last time that its making ended.

Guarantees: went in = came out + drawn before, to other lots or outside + heels + cakes + rinse
apart + waste + unexplained, and nothing is told of twice: what a rinse fetched out of a cake is no
longer in it. Refuses: to book what nobody measured; that is unexplained.
"""

from collections.abc import Iterable, Sequence, Set

from msgspec import Struct

from ledger.domain.entries import Decant, Entry, Filter, Finish, Posting, Rinse
from ledger.domain.entries.choices import Place, RinseTo


class Yield(Struct, frozen=True):
    """What became of the liquid of a batch, in microlitres."""

    went_in: int
    """All liquids put in, with what it was made up and rinsed with."""
    came_out: int
    """What was measured at the end of the making."""
    drawn: int
    """What left the house before that, as a sample or otherwise, without what came back."""
    heel: int
    """Heels that were measured."""
    cake: int
    """What was measured in cakes, without what a rinse fetched out of them afterwards."""
    apart: int
    """Rinse liquor kept apart or thrown away that had been batch liquid."""
    waste: int
    """What was spilt or thrown away whenever the making ended."""
    kept_back: int
    """What was kept back as samples of what came out."""
    to_lots: tuple[tuple[str, int], ...] = ()
    """What each other lot drew of it before the end, by code, in the order of the first draws."""
    filters: tuple[tuple[int, int], ...] = ()
    """What each pass kept, as its volumes in and out were read, by its number."""
    rinse_left: int = 0
    """What was put on cakes for the batch and did not run through, less what ran through besides.

    A rinse apart or to waste is of liquid that never was the batch's; what it fetches out of a cake
    is of what a filter kept, which is told of already.
    """

    @property
    def unexplained(self) -> int:
        """What is left over: evaporation, what stayed in cakes and vessels, errors of reading."""
        gone = self.drawn + sum(amount for _, amount in self.to_lots)
        explained = self.came_out + gone + self.heel + self.cake + self.apart + self.waste
        return self.went_in - explained

    @property
    def unaccounted(self) -> int:
        """What no reading tells of, what filters kept by their volumes in and out being told."""
        kept = sum(amount for _, amount in self.filters) + self.rinse_left
        gone = self.drawn + sum(amount for _, amount in self.to_lots)
        return self.went_in - (self.came_out + gone + self.heel + kept + self.waste)


def yield_of(
    lot: str, entries: Sequence[Entry], liquids: Set[str], draws: Iterable[Entry] = ()
) -> Yield | None:
    """Return what became of the liquid of a batch; None while its making has not ended.

    Args:
        lot: The batch's code.
        entries: Its entries in force, by when they happened.
        liquids: Codes of the lots it is made of that are counted by volume.
        draws: Entries in force by which other lots took of it, whenever they happened.
    """
    ends = [at for at, entry in enumerate(entries) if isinstance(entry.facts, Finish)]
    if not ends:
        return None
    making, after = entries[: ends[-1] + 1], entries[ends[-1] + 1 :]
    told = [entry.facts for entry in making]
    moved = [posting for entry in making for posting in entry.postings]
    finishes = [facts for facts in told if isinstance(facts, Finish)]
    rinses = [facts for facts in told if isinstance(facts, Rinse)]
    decants = [facts for facts in told if isinstance(facts, Decant)]
    return Yield(
        went_in=sum(p.taken for p in moved if p.target == lot and p.source in liquids),
        came_out=finishes[-1].volume.amount,
        drawn=_drawn(lot, moved),
        heel=sum(facts.heel.amount for facts in decants if facts.heel),
        cake=_left_in_cakes(making),
        apart=sum(_fetched(rinse) for rinse in rinses if rinse.went_to is not RinseTo.BATCH),
        waste=sum(facts.waste.amount for facts in finishes if facts.waste),
        kept_back=sum(
            p.taken for entry in after for p in entry.postings if p.place is Place.RETAINED
        ),
        to_lots=_to_lots(lot, draws, making[-1]),
        filters=tuple(
            (facts.pass_no, facts.volume_in.amount - facts.volume_out.amount)
            for facts in told
            if isinstance(facts, Filter)
        ),
        rinse_left=sum(
            rinse.volume_in.amount - rinse.volume_out.amount
            for rinse in rinses
            if rinse.went_to is RinseTo.BATCH
        ),
    )


def _to_lots(lot: str, draws: Iterable[Entry], end: Entry) -> tuple[tuple[str, int], ...]:
    taken: dict[str, int] = {}
    for posting in (p for e in draws if e.position < end.position for p in e.postings):
        if posting.source == lot and posting.target is not None and posting.taken:
            taken[posting.target] = taken.get(posting.target, 0) + posting.taken
    return tuple(taken.items())


def _drawn(lot: str, moved: Iterable[Posting]) -> int:
    drawn = 0
    for posting in moved:
        if posting.source == lot and posting.target is None:
            drawn += posting.taken
        elif posting.target == lot and posting.source is None:
            drawn -= posting.taken
    return drawn


def _left_in_cakes(entries: Iterable[Entry]) -> int:
    held = 0
    for facts in (entry.facts for entry in entries):
        if isinstance(facts, Filter) and facts.in_cake:
            held += facts.in_cake.amount
        elif isinstance(facts, Rinse):
            # A rinse fetches no more out of the cakes than was measured in them.
            held = max(held - _fetched(facts), 0)
    return held


def _fetched(rinse: Rinse) -> int:
    """Return what of the batch a rinse fetched out of the cake: what ran more than was put on."""
    return max(rinse.volume_out.amount - rinse.volume_in.amount, 0)
