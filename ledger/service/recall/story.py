"""What happened to goods, act by act, and what each was told to be before it was put right.

Guarantees: an act is told in all its versions, oldest first; the last is in force unless the entry
was struck; an amount that nobody measured is None. A batch is made when it is finished, of all that
went in until then. Refuses: prices, people, and the steps within a batch.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from enum import Enum, auto

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import (
    Bottle,
    Cases,
    Count,
    Entry,
    Finish,
    House,
    Judge,
    Move,
    Posting,
    Receipt,
    Rinse,
    Start,
    Strike,
    entries_of,
)
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.movements import EACH
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.lots import lots_by_number


class End(Enum):
    """Why a version is in force no longer."""

    CORRECTED = auto()
    """Another stands in its place, since something of it was wrong."""
    STRUCK = auto()
    """It never happened."""
    GREW = auto()
    """More went in, or was told, later."""


class Ended(Struct, frozen=True):
    """The end of a version."""

    at: datetime
    """When the book took what ended it, UTC."""
    how: End
    """Why."""


class Input(Struct, frozen=True):
    """A lot that went in."""

    lot: Lot
    """The lot."""
    amount: int | None
    """How much, in its measure; None where it was not all measured."""


class Happened(Struct, frozen=True):
    """One version of one act."""

    entry: Entry
    """The entry that tells it; of a batch that of its finish."""
    lot: Lot
    """The lot it is about; of what was made, that which came out."""
    amount: int | None
    """How much of it, in its measure; None where the act has no amount."""
    inputs: tuple[Input, ...] = ()
    """What went in, where something was made or filled."""
    ended: Ended | None = None
    """Why it is in force no longer; None while it is."""
    case: int | None = None
    """Number of the case that was filled; None where it was none."""


class Story(Struct, frozen=True):
    """All that happened to goods."""

    house: House | None
    """The house."""
    acts: tuple[tuple[Happened, ...], ...]
    """Every act with its versions, by when it happened."""
    numbers: Mapping[str, str] = {}
    """Numbers of those whom the house deals with (GLN), by name."""


class _Kept(Struct, frozen=True):
    entry: Entry
    by: int | None
    """Number of the entry that corrects or strikes it."""

    def stood(self, number: int) -> bool:
        """Return whether it was in force once that entry had been written."""
        is_there = self.entry.seq <= number and not isinstance(self.entry.facts, Strike)
        return is_there and (self.by is None or self.by > number)


TOLD_ALONE = (Receipt, Move, Count, Judge, Bottle, Rinse)
"""Kinds of entries that tell an act by themselves."""


def story_of(book: Book) -> Story:
    """Return all that happened to goods."""
    with book.reading() as connection:
        rows = queries.journal(connection, 0)
        kept = tuple(_Kept(entry, by) for _, entry, by in rows if entry)
        lots = _lots(connection, kept)
        house = queries.house(connection)
        parties = queries.parties(connection)
    acts = [*_told_alone(kept, lots), *_made(kept, lots)]
    return Story(
        house,
        tuple(sorted(filter(None, acts), key=lambda act: act[-1].entry.position)),
        {party.name: party.gln for party in parties if party.gln},
    )


def _lots(connection: Connection, kept: Iterable[_Kept]) -> dict[str, Lot]:
    numbers = {each.entry.stands_for for each in kept if each.entry.draft.opens}
    return {lot.code: lot for lot in lots_by_number(connection, sorted(numbers)).values()}


def _told_alone(kept: Iterable[_Kept], lots: Mapping[str, Lot]) -> Iterator[tuple[Happened, ...]]:
    chains: dict[int, list[Entry]] = {}
    for each in kept:
        chains.setdefault(each.entry.stands_for, []).append(each.entry)
    for chain in chains.values():
        if isinstance(chain[0].facts, Cases):
            yield from _cases(chain, chain[0].facts, lots)
        elif isinstance(chain[0].facts, TOLD_ALONE):
            yield tuple(_versions(chain, lots))


def _versions(chain: Sequence[Entry], lots: Mapping[str, Lot]) -> Iterator[Happened]:
    for place, entry in enumerate(chain):
        told = _alone(entry, lots)
        if told is None:
            continue
        after = chain[place + 1] if place + 1 < len(chain) else None
        if after is None:
            yield told
        else:
            how = End.STRUCK if isinstance(after.facts, Strike) else End.CORRECTED
            yield replace(told, ended=Ended(after.recorded_at, how))


def _cases(
    chain: Sequence[Entry], most: Cases, lots: Mapping[str, Lot]
) -> Iterator[tuple[Happened, ...]]:
    """Yield each case that was told of; one that a correction took away was never filled.

    No correction tells of further cases, so the first entry tells of all.
    """
    versions = tuple(_versions(chain, lots))
    for number in range(most.first_case, most.first_case + most.count):
        told = [replace(each, case=number) for each in versions if _has_case(each.entry, number)]
        last = told[-1]
        if last.ended and len(told) < len(versions):
            told[-1] = replace(last, ended=Ended(last.ended.at, End.STRUCK))
        yield tuple(told)


def _has_case(entry: Entry, number: int) -> bool:
    facts = entry.facts
    return isinstance(facts, Cases) and number < facts.first_case + facts.count


def _alone(entry: Entry, lots: Mapping[str, Lot]) -> Happened | None:
    """Return what an entry tells by itself; None where it tells nothing."""
    opens, facts = entry.draft.opens, entry.facts
    lot = lots.get((opens.code if opens else entry.draft.lot) or "")
    if lot is None or isinstance(facts, Strike):
        return None
    if isinstance(facts, Cases):
        return Happened(entry, lot, facts.holds * EACH)
    if isinstance(facts, Judge):
        return Happened(entry, lot, None)
    if isinstance(facts, Count):
        # Of nothing there is nothing to be seen.
        return (
            Happened(entry, lot, entry.level.amount) if entry.level and entry.level.amount else None
        )
    if isinstance(facts, (Bottle, Rinse)):
        # Liquor that went back into the batch or to waste made no lot of its own.
        inputs = _inputs(entry.postings, lot.code, lots)
        given = sum(posting.given for posting in entry.postings if posting.target == lot.code)
        return Happened(entry, lot, given, inputs) if opens else None
    return Happened(entry, lot, sum(posting.taken for posting in entry.postings))


def _inputs(postings: Iterable[Posting], target: str, lots: Mapping[str, Lot]) -> tuple[Input, ...]:
    """Return what went into a lot, each source once."""
    taken: dict[str, list[int]] = {}
    for posting in postings:
        if posting.target == target and posting.source and posting.source in lots:
            taken.setdefault(posting.source, []).append(posting.taken)
    return tuple(
        Input(lots[code], sum(parts) if all(parts) else None) for code, parts in taken.items()
    )


def _made(kept: Sequence[_Kept], lots: Mapping[str, Lot]) -> Iterator[tuple[Happened, ...]]:
    begun = {
        each.entry.draft.opens.code
        for each in kept
        if isinstance(each.entry.facts, Start) and each.entry.draft.opens
    }
    batch_of = {
        each.entry.stands_for: code
        for each in kept
        if (code := each.entry.draft.lot) in begun and _bears_on(each.entry, code)
    }
    batches: dict[str, list[_Kept]] = {}
    for each in kept:
        if code := batch_of.get(each.entry.stands_for):
            batches.setdefault(code, []).append(each)
    for code, entries in batches.items():
        yield tuple(_makings(code, entries, lots))


def _bears_on(entry: Entry, code: str | None) -> bool:
    """Return whether an entry says what went into a batch, or what came out."""
    goes_in = any(posting.target == code and posting.source for posting in entry.postings)
    return goes_in or isinstance(entry.facts, Finish)


def _makings(code: str, kept: Sequence[_Kept], lots: Mapping[str, Lot]) -> Iterator[Happened]:
    """Yield the making of a batch as it was told after each entry that changed it."""
    told: Happened | None = None
    finishes = [place for place, each in enumerate(kept) if isinstance(each.entry.facts, Finish)]
    for each in kept[finishes[0] :] if finishes else ():
        now = _making(code, [one.entry for one in kept if one.stood(each.entry.seq)], lots)
        if told and (now is None or _says(now) != _says(told)):
            yield replace(told, ended=Ended(each.entry.recorded_at, _end(each.entry, now)))
        told = now
    if told:
        yield told


def _making(code: str, entries: Sequence[Entry], lots: Mapping[str, Lot]) -> Happened | None:
    done = list(entries_of(entries, Finish))
    if not done or code not in lots:
        return None
    last = max(done, key=lambda entry: entry.position)
    # As they happened, so that what a correction leaves as it was is told in the same order.
    before = sorted(
        (entry for entry in entries if entry.position <= last.position),
        key=lambda entry: entry.position,
    )
    postings = (posting for entry in before for posting in entry.postings)
    return Happened(last, lots[code], last.facts.volume.amount, _inputs(postings, code, lots))


def _says(made: Happened) -> tuple[object, ...]:
    entry = made.entry
    return (entry.stands_for, entry.draft.happened, made.amount, made.inputs)


def _end(entry: Entry, now: Happened | None) -> End:
    if now is None:
        return End.STRUCK
    return End.CORRECTED if entry.draft.corrects else End.GREW
